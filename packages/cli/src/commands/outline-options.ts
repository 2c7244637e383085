import {
  bounds,
  type Outline,
  OutlineError,
  type OutlineFamily,
  type OutlineSizes,
} from '@stripwright/strip-geometry';
import type { Environment } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { DocumentError } from '../faults/fault.js';
import { complaintText } from '../faults/fault-text.js';
import { foldSpelling, nearestSpelling } from '../faults/nearest-spelling.js';
import { inUnits } from '../length/in-units.js';
import { parsePositiveLength } from '../length/parse-length.js';
import { printSize, type Rule } from '../length/print-length.js';
import { readCornersText, readSizeText } from '../order/size-fields.js';
import { svgOutlines } from '../order/svg-outlines.js';
import { readInput } from '../read-input.js';
import { type Given, textOption } from './command.js';
import { type Fit, largestDrawing, largestSizes, sizesText } from './largest-outline.js';
import type { OptionReader } from './option-reader.js';
import { optionKey, optionName } from './size-options.js';

/** What may be asked of a drawing. */
const DRAWING_SIZES = ['across', 'high', 'tolerance'] as const;

export const SVG_OPTION = {
  svg: textOption('a drawing in SVG, in place of the outline; --across or --high rescales it'),
  tolerance: textOption(
    'how far the few lines and arcs fitted to a traced drawing may stray (usually 0.2 mm)',
  ),
};

/** An outline to make a cutter of. */
export interface NamedOutline {
  /** What it is and its size, as given. */
  readonly title: string;
  readonly name: string;
  /** Its family, or the file that it was read from. */
  readonly family: string;
  readonly outline: Outline;
}

/**
 * Draws what was asked for, once all options are known to be in order; as large
 * as fits where that is asked for.
 */
export type Draw = (
  environment: Environment,
  fit: Fit | undefined,
) => Promise<readonly NamedOutline[]>;

/** Reads which outlines are asked for: those of a drawing, or one of a family by its sizes. */
export function readOutlineRequest(
  given: Given,
  families: readonly OutlineFamily[],
  options: OptionReader,
  rule: Rule,
): Draw {
  const file = given.text('svg');
  if (file !== undefined) return drawingRequest(file, given, families, options, rule);
  if (given.subject === '') {
    const message = 'the outline is missing; name one, or give a drawing with --svg';
    throw new CommandError(EXIT.badInput, message);
  }
  const family = namedFamily(given.subject, families);
  const sizes = sizesOf(family, families, options, rule, given);
  return async (_, fit) => {
    const { name } = family;
    const found = fit === undefined ? sizes : largestSizes(family, sizes, fit);
    const shown = fit === undefined ? sizesGiven(family, given) : sizesText(family, found, rule);
    const outline = drawn(family, found, rule);
    return [{ title: titleOf(family, shown), name, family: name, outline }];
  };
}

function drawingRequest(
  file: string,
  given: Given,
  families: readonly OutlineFamily[],
  options: OptionReader,
  rule: Rule,
): Draw {
  if (file === '') options.complain('svg', { code: 'missing', hint: 'the name of a drawing' });
  if (given.subject !== '') options.complain('svg', { code: 'two outlines' }, given.subject);
  refuseOthers('drawing', DRAWING_SIZES, families, options, given);
  const sizes = DRAWING_SIZES.map((name) => {
    const size = options.optional(name, (text) => parsePositiveLength(text, rule.units));
    return size === undefined ? {} : { [name]: size };
  });
  return async (environment, fit) => {
    const text = await readInput(file, environment);
    const read = svgOutlines(text, file, Object.assign({}, ...sizes));
    if (!read.ok) {
      const { complaint } = read;
      const message = complaint.code === 'drawing' ? complaint.reason : '';
      throw new DocumentError(file, [{ complaint, path: [] }], message);
    }
    const outlines = fit === undefined ? read.value : largestDrawing(read.value, fit);
    return outlines.map((outline) => {
      const { across, high } = bounds(outline);
      const round = (length: number) => Math.round(length / rule.mark) * rule.mark;
      const size = printSize(round(across), round(high), rule);
      const title = `${file}: ${outline.name}, ${size}`;
      return { title, name: outline.name, family: file, outline };
    });
  };
}

function namedFamily(word: string, families: readonly OutlineFamily[]): OutlineFamily {
  const family = families.find(({ name }) => foldSpelling(name) === foldSpelling(word));
  if (family !== undefined) return family;
  const choices = families.map(({ name }) => name);
  const nearest = nearestSpelling(word, choices);
  const complaint = { code: 'not a choice', choices, nearest } as const;
  throw new CommandError(EXIT.badInput, complaintText('the outline', complaint, word));
}

/** The sizes given, all of which must be sizes of this family. */
function sizesOf(
  family: OutlineFamily,
  families: readonly OutlineFamily[],
  options: OptionReader,
  { units }: Rule,
  given: Given,
): OutlineSizes {
  const own = family.sizes.map(({ name }) => name);
  refuseOthers(family.name, own, families, options, given);
  const values = family.sizes.map(({ name, kind }) => {
    const value =
      kind === 'corners'
        ? options.optional(optionKey(name), (text) => readCornersText(text, units))
        : options.optional(optionKey(name), (text) => readSizeText(kind, text, units));
    return [name, value] as const;
  });
  return Object.fromEntries(values);
}

/** Complains of every size that is given and is not one of its own. */
function refuseOthers(
  outline: string,
  own: readonly string[],
  families: readonly OutlineFamily[],
  options: OptionReader,
  given: Given,
): void {
  const sizes = families.flatMap((family) => family.sizes.map(({ name }) => name));
  const all = new Set([...sizes, ...DRAWING_SIZES]);
  for (const name of all) {
    if (own.includes(name) || given.text(optionKey(name)) === undefined) continue;
    const known = own.map(optionName);
    options.complain(optionKey(name), { code: 'unknown size', outline, known });
  }
}

function drawn(family: OutlineFamily, sizes: OutlineSizes, { units }: Rule) {
  try {
    return family.draw(sizes);
  } catch (error) {
    if (!(error instanceof OutlineError)) throw error;
    const option = error.field === undefined ? family.name : optionName(error.field);
    throw new CommandError(EXIT.badInput, `${option}: ${inUnits(error.message, units)}`);
  }
}

/** `side 1 5/8` */
function sizesGiven({ sizes }: OutlineFamily, given: Given): readonly string[] {
  return sizes.flatMap(({ name: size }) => {
    const text = given.text(optionKey(size));
    return text === undefined ? [] : [`${size} ${text.trim()}`];
  });
}

/** `Regular polygon: sides 10, side 1 5/8` */
function titleOf({ name }: OutlineFamily, sizes: readonly string[]): string {
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${sizes.join(', ')}`;
}
