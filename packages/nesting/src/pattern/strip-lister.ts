import type { Rolling } from '../problem.js';
import type { Pattern } from './part.js';
import type { Band, PatternPricer, PricedPatterns } from './pattern-pricer.js';

/** A strip apart from the sheet that it is cut from. */
export interface ListedStrip extends Band {
  /** [index of the piece, copies at least 1]. */
  readonly counts: readonly (readonly [number, number])[];
  /** True where it could be wider by any amount and still be cut, its remnants then worth no less. */
  readonly stretches: boolean;
}

/** What may be left beside the strips of a sheet. */
export interface ListedRest {
  /** Gross ticks that it takes at least. */
  readonly extent: number;
  /** Coins that it is worth. */
  readonly kept: number;
}

/** What a sheet may be made of whose first cuts run one way. */
export interface ListedFace {
  readonly box: number;
  readonly cuts: Rolling;
  /** Room for strips side by side, in gross ticks. */
  readonly breadth: number;
  readonly strips: readonly ListedStrip[];
  readonly rests: readonly ListedRest[];
}

/**
 * Prices two-stage patterns and lists their strips, whatever the limits of the shear and the value
 * of remnants.
 */
export interface StripLister extends PatternPricer {
  price(values: ArrayLike<number>, coin: number): PricedStrips;
  /** The pattern of a sheet with these strips; undefined where the shear cannot cut them so. */
  pattern(face: ListedFace, strips: readonly ListedStrip[]): Pattern | undefined;
}

/** What came of pricing; it holds until the lister prices again. */
export interface PricedStrips extends PricedPatterns {
  /**
   * Lists every strip and every rest that a pattern may contain which falls short of
   * `least` by at most `gap`. Of strips with the same pieces whose remnants are worth
   * the same, the narrowest is listed.
   * @param most strips in all
   * @returns undefined where there are more, or too many to look through
   */
  within(least: readonly number[], gap: number, most: number): readonly ListedFace[] | undefined;
}
