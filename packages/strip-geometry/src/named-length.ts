import { StripError } from './strip-error.js';
import { printLength } from './wording.js';

/** A length that an edge or a seam is given by, as a shop or an order names it. */
export interface NamedLength {
  /** Lower-case words, such as `wire diameter`. */
  readonly name: string;
  /** A short phrase for help texts. */
  readonly meaning: string;
}

/** Lengths by name, millimetres. */
export type NamedLengths = Readonly<Record<string, number | undefined>>;

/**
 * The length of that name.
 * @throws StripError naming it if it is missing.
 */
export function lengthNamed(lengths: NamedLengths, name: string, meaning: string): number {
  const length = lengths[name];
  if (length === undefined) {
    throw new StripError(name, `The ${name} is missing; give the ${meaning}, in mm.`);
  }
  return length;
}

/** Refuses a length that is not above 0 and finite. */
export function checkAboveZero(name: string, length: number): void {
  if (!Number.isFinite(length) || length <= 0) {
    throw new StripError(name, `The ${name} must be above 0 mm; got ${printLength(length)}.`);
  }
}

/** A kind of edge or seam that is given by one length, as the lists of them hold it. */
export function ofOneLength<T>(
  name: string,
  summary: string,
  size: NamedLength,
  example: number,
  make: (length: number) => T,
) {
  return {
    name,
    summary,
    sizes: [size],
    example: { [size.name]: example },
    make: (sizes: NamedLengths): T => make(lengthNamed(sizes, size.name, size.meaning)),
  };
}
