import type { Rolling } from '../problem.js';

/**
 * How a rectangle of metal is to be cut, without saying where it lies. Lengths
 * are gross: every piece, and every rectangle, is counted longer and wider by
 * one kerf, so that parts laid side by side simply add up.
 */
export type Part = LayPart | SplitPart;

/** One piece, trimmed to size where the rectangle is longer or wider. */
export interface LayPart {
  readonly kind: 'lay';
  /** Index of the piece in the problem. */
  readonly piece: number;
  /** True where the length of the piece lies across the stock. */
  readonly turned: boolean;
}

/** A rectangle divided by parallel cuts. */
export interface SplitPart {
  readonly kind: 'split';
  /** How the cuts run, seen along the length of the stock. */
  readonly cuts: Rolling;
  /** From the origin on; what is left behind the last is a remnant. */
  readonly parts: readonly Slice[];
}

export interface Slice {
  /** Gross extent square to the cuts. */
  readonly extent: number;
  readonly part: Part;
}

/** One way of cutting one stock. */
export interface Pattern {
  /** Index of the stock class. */
  readonly stockClass: number;
  readonly part: Part;
  /** [index of the piece, copies at least 1], ascending by piece. */
  readonly counts: readonly (readonly [number, number])[];
  /** Coins that the remnants are worth in the rack. */
  readonly kept: number;
}
