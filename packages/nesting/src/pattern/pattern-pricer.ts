import type { Pattern } from './part.js';

/**
 * Finds the patterns of one kind that are worth most. One implementation for
 * each kind of cutting; column generation, bounds and the search know only this.
 */
export interface PatternPricer {
  /**
   * Prices every box.
   * @param values one for each piece, at least 0, in any one unit
   * @param coin what a coin of kept remnants is worth in that unit
   */
  price(values: ArrayLike<number>, coin: number): PricedPatterns;
}

/** What came of pricing; it holds until the pricer prices again. */
export interface PricedPatterns {
  /**
   * For each box, a worth that no pattern of this kind exceeds, and which its
   * pattern attains where demand does not bind. 0 where nothing is worth cutting.
   */
  readonly worth: readonly number[];
  /** A pattern of most worth for the box, or none where nothing is worth cutting. */
  pattern(box: number): Pattern | undefined;
}
