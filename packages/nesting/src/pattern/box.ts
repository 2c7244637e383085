import type { Rolling } from '../problem.js';

/** A class of equal stock as the pattern pricers see it. */
export interface Box {
  /** Gross ticks along the stock's length, the trim of its edges taken off. */
  readonly length: number;
  /** Gross ticks along its width. */
  readonly width: number;
  /** How the first cuts may run, one or both. */
  readonly firstCuts: readonly Rolling[];
  /** Ways in which pieces may lie on it. */
  readonly lays: readonly BoxLay[];
}

/** One way in which a piece may lie on a box. */
export interface BoxLay {
  /** Index of the piece in the problem. */
  readonly piece: number;
  readonly turned: boolean;
  /** Gross ticks along the stock's length. */
  readonly length: number;
  /** Gross ticks along the stock's width. */
  readonly width: number;
}
