import type { Deadline } from '../deadline.js';
import type { Pattern } from '../pattern/part.js';
import type { BandOffer, PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { BandBook } from './band-book.js';
import type { BandAnswer, BandDuals, BandMaster } from './band-master.js';
import { coinWorth, type ExactBound, exactBound, type Multipliers } from './exact-bound.js';
import { kindsWanted } from './kinds-wanted.js';
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
  /** A pattern without the pieces that are more than the demand. */
  readonly proper: (pattern: Pattern, demand: readonly number[]) => Pattern;
  /** True once a bound is as good as the caller can use. */
  readonly enough: (scaledBound: number) => boolean;
  /** Rounds after which to stop, unfinished; no limit when absent. */
  readonly mostRounds?: number;
  readonly deadline: Deadline;
}

/** What a bound is computed from. */
type BoundRequest = Pick<
  LinearRequest,
  'pricer' | 'classes' | 'demand' | 'objective' | 'keptAtMost' | 'scale'
>;

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
/** Patterns that are added in a round: of thousands of boxes, those that gain most. */
const MOST_PATTERNS = 400;
/** With so many kinds of pieces, bands are left out that lie in slots which no sheet has. */
const MANY_KINDS = 50;

/**
 * Solves the linear master over all patterns of a kind by column generation:
 * solve, take the duals, price every class of stock, add what gains, until nothing
 * does. Bands that gain by themselves are added with the patterns, which saves
 * most of the rounds. Every round also gives an exact lower bound.
 */
export async function solveLinear(request: LinearRequest): Promise<LinearResult> {
  const { demand, scale, book, master } = request;
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
    const { multipliers, priced, bound } = boundAt(request, duals);
    if (bound.scaled > best.scaled) best = bound;
    if (request.enough(best.scaled)) return done(true);
    const before = book.sheets.length + book.bands.length;
    const grown = () => book.sheets.length + book.bands.length > before;
    const prices = duals.classes.map((dual) => (Math.max(0, dual) + LEAST_GAIN) * scale);
    if (priced.worth.every((worth, g) => worth <= prices[g])) return done(true);
    const gaining = gainMost(priced, prices);
    for (const { pattern } of gaining) {
      if (request.deadline.left() <= 0) return done(false);
      book.addPattern(request.proper(pattern, demand));
    }
    if (!grown()) addThriftyPatterns(request, multipliers, duals);
    // The linear plan is bounded by patterns with surplus too, so they belong into it.
    if (!grown()) for (const { pattern } of gaining) book.addPattern(pattern);
    if (!grown()) return done(true);
    addBands(request, duals, priced.bands?.() ?? []);
  }
}

/** The patterns that are worth more than the price of their box, or those of them that are so by most. */
function gainMost({ worth, patterns }: PricedPatterns, prices: readonly number[]) {
  const gaining = worth.flatMap((_, g) =>
    patterns(g)
      .filter((offer) => offer.worth > prices[g])
      .map((offer) => ({ pattern: offer.pattern, gain: offer.worth - prices[g] })),
  );
  if (gaining.length <= MOST_PATTERNS) return gaining;
  return gaining.sort((a, b) => b.gain - a.gain).slice(0, MOST_PATTERNS);
}

/** What the duals of a linear plan are worth as multipliers: the bound there, and the patterns that gain. */
export function boundAt(
  request: BoundRequest,
  duals: BandDuals,
): {
  readonly multipliers: Multipliers;
  readonly priced: PricedPatterns;
  readonly bound: ExactBound;
} {
  const { pricer, classes, demand, objective, keptAtMost, scale } = request;
  const multipliers: Multipliers = {
    scale,
    pieces: Float64Array.from(duals.pieces, (dual) => wholeDual(dual, scale)),
    caps: duals.caps.map((dual) => wholeDual(dual, scale)),
  };
  const priced = pricer.price(multipliers.pieces, coinWorth(objective, multipliers));
  const bound = exactBound(priced.worth, keptAtMost, classes, demand, objective, multipliers);
  return { multipliers, priced, bound };
}

/**
 * The bound of a linear plan once more, by worths of patterns that are closer but take longer to have;
 * the same where there are none, or no time is left.
 */
export function closerBound(
  request: BoundRequest & Pick<LinearRequest, 'deadline'>,
  { bound }: LinearResult,
): ExactBound {
  if (request.deadline.left() <= 0 || request.pricer.atMost === undefined) return bound;
  const again = boundBy(request, bound.asked);
  return again.scaled > bound.scaled ? again : bound;
}

/** The bound that multipliers prove, whatever they come from: as close as can be had. */
export function boundBy(
  { pricer, classes, demand, objective, keptAtMost, scale }: BoundRequest,
  multipliers: Multipliers,
): ExactBound {
  const own = rescaled(multipliers, scale);
  const coin = coinWorth(objective, own);
  const worth = pricer.atMost?.(own.pieces, coin) ?? pricer.price(own.pieces, coin).worth;
  return exactBound(worth, keptAtMost, classes, demand, objective, own);
}

function rescaled(multipliers: Multipliers, scale: number): Multipliers {
  const by = scale / multipliers.scale;
  const whole = (value: number) => Math.floor(value * by);
  return { scale, pieces: multipliers.pieces.map(whole), caps: multipliers.caps.map(whole) };
}

/** By how much values are lowered to find patterns that leave more. */
const THRIFT = [0.5, 0.2, 0.05];

/**
 * Where remnants have a value, the pattern of most worth may owe it to copies that
 * are more than the demand, and be known already without them. At lower values,
 * patterns come first that leave more and cut less.
 */
function addThriftyPatterns(
  { objective, keptAtMost, pricer, classes, scale, book, proper, demand, deadline }: LinearRequest,
  multipliers: Multipliers,
  duals: BandDuals,
): void {
  const coin = coinWorth(objective, multipliers);
  if (coin === 0 || keptAtMost.every((coins) => coins === 0)) return;
  for (const share of THRIFT) {
    if (deadline.left() <= 0) return;
    const priced = pricer.price(
      multipliers.pieces.map((value) => Math.floor(value * share)),
      coin,
    );
    classes.forEach((_, g) => {
      for (const { pattern } of priced.patterns(g)) {
        const cut = proper(pattern, demand);
        const worth = cut.counts.reduce(
          (sum, [piece, copies]) => sum + multipliers.pieces[piece] * copies,
          cut.kept * coin,
        );
        const price = Math.max(0, duals.classes[g]) * scale;
        if (worth > price + LEAST_GAIN * scale) book.addPattern(cut);
      }
    });
  }
}

/**
 * Adds the bands that are worth more than their slots. With many kinds of pieces, those of slots that no
 * sheet has so far are left out, since they are so many that the master takes most of the time:
 * the division that has one brings its band. With few, the integer masters find use for them.
 */
function addBands(
  { book, demand, scale }: LinearRequest,
  duals: BandDuals,
  offers: readonly BandOffer[],
): void {
  const many = kindsWanted(demand) >= MANY_KINDS;
  for (const offer of offers) {
    if (many && !book.has(offer)) continue;
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
