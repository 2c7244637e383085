import type { Rolling } from '../problem.js';
import type { Part, Pattern } from './part.js';

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
  /**
   * For each box, a worth that no pattern exceeds, no more than that of `price` and mostly less, which takes
   * longer; undefined where it would take too long, absent where that of `price` is as close as can be.
   */
  readonly atMost?:
    | ((values: ArrayLike<number>, coin: number) => readonly number[] | undefined)
    | undefined;
  /**
   * Lists every band and every division of a sheet that falls short of the best by
   * at most `gap`, where this kind of cutting can list them and no remnant has a
   * value. Bands to which a piece can be added are left out.
   * @param values one for each piece, whole numbers
   * @param least for each box, the worth that the best division of a sheet falls short of by nothing
   * @param most bands and divisions in all
   * @returns undefined where there are more, or too many to look through
   */
  readonly within?:
    | ((
        values: ArrayLike<number>,
        least: readonly number[],
        gap: number,
        most: number,
      ) => PatternList | undefined)
    | undefined;
  /**
   * Lists the bands of one width that are worth at least so much, where this kind of
   * cutting can list them and no remnant has a value. Bands to which a piece can be
   * added are left out.
   * @param values one for each piece, at least 0
   * @param beyond only bands that need to be wider than so many gross ticks, fewer than the width
   * @param most bands
   * @returns undefined where there are more, or too many to look through
   */
  readonly bandsOf?:
    | ((
        values: ArrayLike<number>,
        at: Omit<Band, 'part' | 'kept'>,
        beyond: number,
        least: number,
        most: number,
      ) => readonly Band[] | undefined)
    | undefined;
}

export interface PatternList {
  readonly bands: readonly Band[];
  readonly sheets: readonly SheetDivision[];
}

/** How first cuts divide a box, whatever is cut from the bands. */
export interface SheetDivision {
  readonly box: number;
  readonly cuts: Rolling;
  /** [gross extent of the band, bands at least 1]. */
  readonly extents: readonly (readonly [number, number])[];
}

/** What came of pricing; it holds until the pricer prices again. */
export interface PricedPatterns {
  /**
   * For each box, a worth that no pattern of this kind exceeds, 0 where nothing
   * is worth cutting.
   */
  readonly worth: readonly number[];
  /**
   * Patterns of most worth for the box, one or a few; none where nothing is worth
   * cutting. `worth` is what the values and kept coins come to.
   */
  patterns(box: number): readonly { readonly pattern: Pattern; readonly worth: number }[];
  /** Good bands for a first cut apart from any sheet, where the kind of cutting knows them. */
  bands?(): readonly BandOffer[];
}

/** A band that could be had. */
export interface BandOffer {
  /** Index of a box that it fits. */
  readonly box: number;
  /** How the first cuts of the box run. */
  readonly cuts: Rolling;
  /** Gross extent square to them. */
  readonly extent: number;
  /** What the values and kept coins come to. */
  readonly worth: number;
  make(): Band;
}

/** What one first cut takes off a box, with what is cut from it. */
export interface Band {
  /** Index of a box that it fits. */
  readonly box: number;
  /** How the first cuts of the box run. */
  readonly cuts: Rolling;
  /** Gross extent square to them. */
  readonly extent: number;
  readonly part: Part;
  /** Coins that the remnants within it are worth. */
  readonly kept: number;
}
