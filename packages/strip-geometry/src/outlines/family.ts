import type { Outline, Point } from '../outline.js';

/**
 * What a size is: a `length` in millimetres, a `count` (a whole number), an
 * `angle` in degrees, a `ratio` (a plain number), `corners` (a list of points),
 * or a `letter` (one letter from A to Z).
 */
export type SizeKind = 'length' | 'count' | 'angle' | 'ratio' | 'corners' | 'letter';

/** One size that a family of outlines is given by, as an order names it. */
export interface SizeField {
  /** Lower-case words, such as `across flats`. */
  readonly name: string;
  readonly kind: SizeKind;
  /** False where another size can stand in for it, or it has a default. */
  readonly required: boolean;
  /** A short phrase for help texts, such as `from flat to flat`. */
  readonly meaning: string;
}

/** The value of a size: a number in the unit of its kind, corners in millimetres, or a letter. */
export type SizeValue = number | string | readonly Point[];

/** Sizes by field name. */
export type OutlineSizes = Readonly<Record<string, SizeValue | undefined>>;

/** A kind of outline that can be ordered in any size. One file each. */
export interface OutlineFamily {
  /** Lower-case words, such as `regular polygon`. */
  readonly name: string;
  /** One line for help texts. */
  readonly summary: string;
  readonly sizes: readonly SizeField[];
  /** Sizes that draw a good example, used by the gallery, help texts and tests. */
  readonly example: OutlineSizes;
  /**
   * Draws the outline.
   * @throws OutlineError naming the size that is missing, out of range or contradictory.
   */
  draw(sizes: OutlineSizes): Outline;
}
