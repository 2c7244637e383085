import type { Deadline } from '../deadline.js';
import type { BandOffer, PatternPricer } from '../pattern/pattern-pricer.js';
import type { BandBook } from './band-book.js';
import type { BandAnswer, BandDuals, BandMaster } from './band-master.js';
import { coinWorth, type ExactBound, exactBound, type Multipliers } from './exact-bound.js';
import type { Objective } from './objective.js';
import type { StockClass } from './stock-class.js';

export interface LinearRequest {
  readonly pricer: PatternPricer;
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  /** For each class, coins that no pattern's remnants exceed. */
  readonly keptAtMost: readonly number[];
  /** Scale of exact multipliers. */
  readonly scale: number;
  readonly book: BandBook;
  /** Holds this demand and these classes; it starts from where it was left. */
  readonly master: BandMaster;
  /** True once a bound is as good as the caller can use. */
  readonly enough: (scaledBound: number) => boolean;
  /** Rounds after which to stop, unfinished; no limit when absent. */
  readonly mostRounds?: number;
  readonly deadline: Deadline;
}

export interface LinearResult {
  /** The best bound met with on the way; it holds wherever the loop ended. */
  readonly bound: ExactBound;
  /** The linear plan; undefined where there is none. */
  readonly answer: BandAnswer | undefined;
  /** Linear masters solved. */
  readonly rounds: number;
  /** False where a limit ended the loop before the linear master was solved. */
  readonly finished: boolean;
}

/** A pattern must gain this share of a coin to be worth a column. */
const LEAST_GAIN = 1e-7;

/**
 * Solves the linear master over all patterns of a kind by column generation:
 * solve, take the duals, price every class of stock, add what gains, until nothing
 * does. Bands that gain by themselves are added with the patterns, which saves
 * most of the rounds. Every round also gives an exact lower bound.
 */
export async function solveLinear(request: LinearRequest): Promise<LinearResult> {
  const { classes, demand, objective, scale, book, master } = request;
  let best = zeroBound(request);
  let answer: BandAnswer | undefined;
  let rounds = 0;
  const done = (finished: boolean): LinearResult => ({ bound: best, answer, rounds, finished });
  for (;;) {
    const seconds = request.deadline.left();
    if (seconds <= 0 || rounds === request.mostRounds) return done(false);
    rounds++;
    master.addFromBook();
    const solved = await master.solve({ integer: false, seconds });
    if (typeof solved === 'string' || solved.duals === undefined) return done(false);
    answer = solved;
    const { duals } = solved;
    const multipliers: Multipliers = {
      scale,
      pieces: Float64Array.from(duals.pieces, (dual) => wholeDual(dual, scale)),
      caps: duals.caps.map((dual) => wholeDual(dual, scale)),
    };
    const priced = request.pricer.price(multipliers.pieces, coinWorth(objective, multipliers));
    const bound = exactBound(
      priced.worth,
      request.keptAtMost,
      classes,
      demand,
      objective,
      multipliers,
    );
    if (bound.scaled > best.scaled) best = bound;
    if (request.enough(best.scaled)) return done(true);
    const before = book.sheets.length + book.bands.length;
    classes.forEach((_, g) => {
      const price = Math.max(0, duals.classes[g]) * scale;
      if (priced.worth[g] <= price + LEAST_GAIN * scale) return;
      for (const { pattern, worth } of priced.patterns(g)) {
        if (worth > price + LEAST_GAIN * scale) book.addPattern(pattern);
      }
    });
    if (book.sheets.length + book.bands.length === before) return done(true);
    addBands(book, duals, priced.bands?.() ?? [], scale);
  }
}

/** Adds the bands that are worth more than their slots. */
function addBands(
  book: BandBook,
  duals: BandDuals,
  offers: readonly BandOffer[],
  scale: number,
): void {
  for (const offer of offers) {
    const slot = book.slot(offer.box, offer.cuts, offer.extent);
    const price = (duals.slots[slot] ?? 0) * scale;
    if (offer.worth > price + LEAST_GAIN * scale) book.addBand(offer.make());
  }
}

/** The bound that holds before anything is known of what pieces are worth. */
function zeroBound({ classes, demand, objective, scale, keptAtMost }: LinearRequest) {
  const pieces = new Float64Array(demand.length);
  const multipliers: Multipliers = { scale, pieces, caps: objective.caps.map(() => 0) };
  const coin = coinWorth(objective, multipliers);
  const worth = keptAtMost.map((coins) => coins * coin);
  return exactBound(worth, keptAtMost, classes, demand, objective, multipliers);
}

function wholeDual(dual: number, scale: number): number {
  return Math.max(0, Math.floor(dual * scale));
}
