/**
 * What is to be cut, and from what. Every length is a whole number of ticks
 * (the shop's smallest mark) and every price a whole number of the smallest
 * coin, so that fits and sums are exact.
 */

/** A rectangle wanted `quantity` times. */
export interface Piece {
  /** Unique among the pieces of a problem. */
  readonly id: string;
  /** Ticks, at least 1. */
  readonly length: number;
  /** Ticks, at least 1. */
  readonly width: number;
  /** At least 1. */
  readonly quantity: number;
  /** Whether it may lie turned by 90 degrees on the sheet. */
  readonly mayTurn: boolean;
}

/** A size of sheet: some on hand (already paid for), more to be had at a price. */
export interface Sheet {
  readonly kind: 'sheet';
  /** Unique among the stock of a problem. */
  readonly id: string;
  /** Ticks, at least 1. */
  readonly length: number;
  /** Ticks, at least 1. */
  readonly width: number;
  /** Coins for one sheet that is bought, at least 0. */
  readonly price: number;
  /** Sheets in the shop; they cost nothing to use. */
  readonly onHand: number;
  /** Sheets that can be bought, or `'any'` number of them. */
  readonly canBuy: number | 'any';
}

/** One piece left over from an earlier job; it costs nothing to use. */
export interface Offcut {
  readonly kind: 'offcut';
  /** Unique among the stock of a problem. */
  readonly id: string;
  /** Ticks, at least 1. */
  readonly length: number;
  /** Ticks, at least 1. */
  readonly width: number;
}

export type Stock = Sheet | Offcut;

/** The machine that cuts. It makes guillotine cuts only, with no kerf. */
export interface Shear {
  /**
   * Which way the first cuts run: `'along'` the stock's length, `'across'` it
   * (along its width), or whichever is better for each sheet.
   */
  readonly firstCut: 'along' | 'across' | 'either';
  /** The longest cut it can make, in ticks; absent means no limit. */
  readonly longestCut?: number;
}

/** The whole task handed to the planner. */
export interface CuttingProblem {
  readonly pieces: readonly Piece[];
  readonly stock: readonly Stock[];
  readonly shear: Shear;
}
