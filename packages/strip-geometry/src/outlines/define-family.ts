import { checkOutline } from '../check-outline.js';
import type { Point, Segment } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { printLength, printNumber } from '../wording.js';
import type { OutlineFamily, OutlineSizes, SizeField, SizeKind, SizeValue } from './family.js';

/** Sizes that have passed the checks that every family shares. */
export interface CheckedSizes {
  /** A size that the family requires. */
  number(name: string): number;
  /** A size that may be left out. */
  optional(name: string): number | undefined;
  /** A list of corners that the family requires. */
  corners(name: string): readonly Point[];
  /** A letter that the family requires, as a capital. */
  letter(name: string): string;
}

/** A family in the making: everything but the checks that all families share. */
export interface FamilyDefinition extends Omit<OutlineFamily, 'draw'> {
  /** Draws the closed path from sizes that are of the right kind. */
  path(sizes: CheckedSizes): readonly Segment[];
}

/**
 * Completes a family: its `draw` refuses missing, unknown and ill-typed sizes,
 * lets the family draw, and checks what it drew.
 */
export function defineFamily({ path, ...family }: FamilyDefinition): OutlineFamily {
  return {
    ...family,
    draw(sizes) {
      const outline = { name: family.name, segments: path(checkSizes(family, sizes)) };
      checkOutline(outline);
      return outline;
    },
  };
}

function checkSizes(family: Omit<OutlineFamily, 'draw'>, sizes: OutlineSizes): CheckedSizes {
  const known = family.sizes.map(({ name }) => name);
  for (const [name, value] of Object.entries(sizes)) {
    if (value !== undefined && !known.includes(name)) {
      const message = `${withArticle(family.name)} has no size "${name}"; its sizes are ${known.join(', ')}.`;
      throw new OutlineError('unknown size', message, name);
    }
  }
  const numbers = new Map<string, number>();
  const lists = new Map<string, readonly Point[]>();
  const letters = new Map<string, string>();
  for (const field of family.sizes) {
    const value = sizes[field.name];
    if (value === undefined) {
      if (field.required) {
        const message = `${withArticle(family.name)} needs "${field.name}", ${field.meaning}.`;
        throw new OutlineError('missing size', message, field.name);
      }
    } else if (field.kind === 'corners') {
      lists.set(field.name, checkCorners(field, value));
    } else if (field.kind === 'letter') {
      letters.set(field.name, checkLetter(field, value));
    } else {
      numbers.set(field.name, checkNumber(field, value));
    }
  }
  return {
    number: (name) => present(numbers.get(name), name),
    optional: (name) => numbers.get(name),
    corners: (name) => present(lists.get(name), name),
    letter: (name) => present(letters.get(name), name),
  };
}

/** `A heart`, `An acorn` */
function withArticle(name: string): string {
  return `${/^[aeiou]/.test(name) ? 'An' : 'A'} ${name}`;
}

function present<T>(value: T | undefined, name: string): T {
  if (value === undefined) {
    throw new OutlineError('missing size', `"${name}" is missing.`, name);
  }
  return value;
}

const WANTED: Readonly<Record<SizeKind, string>> = {
  length: 'a length above 0 mm',
  count: 'a whole number above 0',
  angle: 'an angle above 0 and below 360 degrees',
  ratio: 'a number above 0',
  corners: 'a list of corners, each with an x and a y',
  letter: 'one letter from A to Z',
};

function checkNumber(field: SizeField, value: SizeValue): number {
  if (typeof value !== 'number') {
    const message = `"${field.name}" must be ${WANTED[field.kind]}; got ${describe(value)}.`;
    throw new OutlineError('wrong kind', message, field.name);
  }
  const fits =
    Number.isFinite(value) &&
    value > 0 &&
    (field.kind !== 'count' || Number.isInteger(value)) &&
    (field.kind !== 'angle' || value < 360);
  if (!fits) {
    const got = field.kind === 'length' ? printLength(value) : printNumber(value);
    const message = `"${field.name}" must be ${WANTED[field.kind]}; got ${got}.`;
    throw new OutlineError('out of range', message, field.name);
  }
  return value;
}

function checkCorners(field: SizeField, value: SizeValue): readonly Point[] {
  if (!Array.isArray(value)) {
    const message = `"${field.name}" must be ${WANTED.corners}; got ${describe(value)}.`;
    throw new OutlineError('wrong kind', message, field.name);
  }
  value.forEach((corner: Partial<Point> | undefined, index) => {
    const odd = [corner?.x, corner?.y].find((number) => !Number.isFinite(number));
    if (odd !== undefined || corner?.x === undefined || corner.y === undefined) {
      const message =
        `Corner ${index + 1} of "${field.name}" must have two finite numbers; ` +
        `got ${corner?.x} and ${corner?.y}.`;
      throw new OutlineError('out of range', message, field.name);
    }
  });
  return value;
}

function checkLetter(field: SizeField, value: SizeValue): string {
  if (typeof value !== 'string' || !/^[A-Z]$/i.test(value)) {
    const message = `"${field.name}" must be ${WANTED.letter}; got ${describe(value)}.`;
    throw new OutlineError('wrong kind', message, field.name);
  }
  return value.toUpperCase();
}

function describe(value: SizeValue): string {
  if (Array.isArray(value)) {
    return `a list of ${value.length}`;
  }
  return `${typeof value} ${String(value)}`;
}

/**
 * Refuses a size outside `least` to `most`, both included. `why` completes the
 * sentence, such as `so that the lobes meet the sides`.
 */
export function checkRange(
  name: string,
  value: number,
  least: number,
  most: number,
  why: string,
): void {
  if (value < least || value > most) {
    const message =
      `"${name}" must be from ${printNumber(least)} to ${printNumber(most)} ${why}; ` +
      `got ${printNumber(value)}.`;
    throw new OutlineError('out of range', message, name);
  }
}
