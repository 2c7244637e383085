import type { Deadline } from '../deadline.js';
import type { BandBook } from '../master/band-book.js';
import type { Objective } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import type { Engines } from '../solvers/engine-choice.js';

/** What every part of a search works with. */
export interface SearchGround {
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  /** For each piece, what going without one costs in a linear master. */
  readonly penalties: readonly number[];
  /** For each class, coins that no pattern's remnants exceed. */
  readonly keptAtMost: readonly number[];
  /** Scale of exact multipliers. */
  readonly scale: number;
  /** Every pattern that came up. */
  readonly book: BandBook;
  readonly newBook: () => BandBook;
  /** A pricer that cuts no more of a piece than is given, as far as its kind can. */
  readonly pricerFor: (demand: readonly number[]) => PatternPricer;
  readonly engines: Engines;
  readonly deadline: Deadline;
  /** What was done, counted as it is done. */
  readonly effort: Effort;
}

/** Counts that do not depend on the machine. */
export interface Effort {
  rounds: number;
  integerMasters: number;
  nodes: number;
}
