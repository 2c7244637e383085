import type { Deadline } from '../deadline.js';
import type { BandBook } from '../master/band-book.js';
import type { Multipliers } from '../master/exact-bound.js';
import type { Objective } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { Limits } from '../pattern/limits.js';
import type { Part, Pattern } from '../pattern/part.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import type { StripLister } from '../pattern/strip-lister.js';
import type { Engines } from '../solvers/engine-choice.js';
import type { Planned } from './planned.js';

/** What every part of a search works with. */
export interface SearchGround {
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  /** For each piece, what going without one costs in a linear master. */
  readonly penalties: readonly number[];
  /** For each class, coins that no pattern's remnants exceed. */
  readonly keptAtMost: readonly number[];
  /** Coins that remnants are worth at most for each square tick. */
  readonly keptPerTick: number;
  /** Scale of exact multipliers. */
  readonly scale: number;
  readonly limits: Limits;
  /** Every pattern that came up. */
  readonly book: BandBook;
  readonly newBook: () => BandBook;
  /** Prices all patterns of the kind, so that its worth makes a bound. */
  readonly pricer: PatternPricer;
  /** For the whole demand, each takes longer than the one before and finds more; the last is `pricer`. */
  readonly inTurn: readonly PatternPricer[];
  /** Where patterns of the kind take long to price, far longer than in two stages: what makes a rough bound soon. */
  readonly rough: RoughGround | undefined;
  /**
   * A quick pricer of patterns for so many of each piece, to find columns with. Its
   * worth need not hold for all patterns of the kind.
   */
  readonly pricerFor: (demand: readonly number[]) => PatternPricer;
  /** A pattern without the pieces that are more than the demand. */
  readonly proper: (pattern: Pattern, demand: readonly number[]) => Pattern;
  /** A plan with its surplus taken out, its remnants then worth the more; only where they have a value. */
  readonly bare: ((planned: readonly Planned[]) => readonly Planned[]) | undefined;
  /** Plans made as if offcuts and remnants were worth nothing; undefined where they are worth nothing anyway. */
  readonly withoutValue: PlansWithoutValue | undefined;
  /**
   * Makes plans with all stock cut in two stages; `tell` is called now and then, and with each that is better
   * than those before. Tells the patterns that came up. Undefined where patterns have no more stages anyway.
   */
  readonly inTwoStages:
    | ((until: Deadline, tell: (better?: readonly Planned[]) => void) => Promise<BandBook>)
    | undefined;
  /** Cuts a demand from some of the stock by the rule of thumb; undefined where that is not enough. */
  readonly firstFit: (
    demand: readonly number[],
    classes: readonly StockClass[],
  ) => readonly Planned[] | undefined;
  /**
   * Every pattern that the best plan may need, where the problem is small enough for
   * trying every cut; undefined where it is not.
   * @param over asked now and then; true gives up
   */
  readonly everyPattern: (over: () => boolean) => readonly Pattern[] | undefined;
  /**
   * Lists strips of two-stage patterns, whatever the limits of the shear and the value of
   * remnants; undefined for other kinds of cutting, or where strips of every width are too many.
   */
  readonly stripLister: () => StripLister | undefined;
  readonly engines: Engines;
  readonly deadline: Deadline;
  /** What was done, counted as it is done. */
  readonly effort: Effort;
}

/** For a bound by patterns that take little time to price, and which no other can better. */
export interface RoughGround {
  readonly pricer: PatternPricer;
  readonly newBook: () => BandBook;
  /** A whole box with these pieces on it, as rough patterns are. */
  readonly whole: (stockClass: number, part: Part) => Pattern;
}

/** Plans made as if offcuts and remnants were worth nothing, which are found much sooner for many pieces. */
export interface PlansWithoutValue {
  /**
   * Makes plans. `tell` is called now and then, and with each that is better than those before.
   * @returns what bounded their linear plan, if it came to one
   */
  plan(
    until: Deadline,
    tell: (better?: readonly Planned[]) => void,
  ): Promise<Multipliers | undefined>;
  /**
   * A plan that costs no more money than another, but leaves a remnant worth so many coins: room for it is
   * sought as for a piece. Undefined where none was found.
   */
  leaving(
    coins: number,
    planned: readonly Planned[],
    until: Deadline,
  ): Promise<readonly Planned[] | undefined>;
}

/** Counts that do not depend on the machine. */
export interface Effort {
  rounds: number;
  integerMasters: number;
  nodes: number;
}
