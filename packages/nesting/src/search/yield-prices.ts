import { BandMaster } from '../master/band-master.js';
import { boundAt, type LinearRequest, solveLinear } from '../master/column-generation.js';
import { coinWorth, exactScale } from '../master/exact-bound.js';
import type { Measure } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { PricedStrips, StripLister } from '../pattern/strip-lister.js';
import type { SearchGround } from './ground.js';

/** Multipliers at which what a sheet yields is weighed. */
export interface YieldPrices {
  /** One for each piece, whole numbers, and what a coin is worth in their unit. */
  readonly values: ArrayLike<number>;
  readonly coin: number;
  /** For each class, what no sheet is worth more than. */
  readonly best: readonly number[];
  /** Lists the strips of sheets that are worth little less; it holds until the lister prices again. */
  readonly within: PricedStrips['within'];
}

/** Rounds of pricing at most. */
const ROUNDS = 60;
/** What going without all of a piece counts, in whole orders; a piece is never worth more than one. */
const SHORTAGE = 2;

/**
 * What pieces and coins are worth where the money is made least.
 * @param master of the whole problem; its supplies are set to the classes
 * @param target coins above which a plan is of no use
 * @returns with the bound in units of 1/scale; undefined where there is no linear plan in time
 */
export async function moneyPrices(
  ground: SearchGround,
  lister: StripLister,
  master: BandMaster,
  classes: readonly StockClass[],
  target: number,
): Promise<{ readonly prices: YieldPrices; readonly scaled: number } | undefined> {
  master.setSupplies(classes);
  const enough = (value: number) => value > target * ground.scale;
  const own = { ...ground, classes, master, pricer: lister, mostRounds: ROUNDS, enough };
  const priced = await pricesOf(ground, lister, own);
  return priced && { prices: priced.prices, scaled: priced.scaled };
}

/**
 * What they are worth where room is made most: by how much larger the order could be in the
 * linear plan, if no more than `atMost` coins are spent. Where sheets are cut almost whole and
 * one more would cost much, few lots of pieces lose no more than that room.
 * @returns `none` where the linear plan has no room for the order itself; undefined where there is
 *   none in time
 */
export async function roomPrices(
  ground: SearchGround,
  lister: StripLister,
  measure: Measure,
  classes: readonly StockClass[],
  atMost: number,
): Promise<YieldPrices | 'none' | undefined> {
  const { demand, engines } = ground;
  const objective = { cost: undefined, caps: [{ measure, atMost }] };
  const book = ground.newBook();
  book.adopt(ground.book, [...ground.book.bands.keys()], [...ground.book.sheets.keys()]);
  const penalties = demand.map((quantity) => SHORTAGE / Math.max(1, quantity));
  const request = { demand, classes, objective, penalties, spare: demand, mostSpare: 1, book };
  const scale = exactScale(2 * SHORTAGE * demand.length);
  const master = new BandMaster({ ...request, engines });
  try {
    const own = { ...ground, classes, objective, book, scale, master, pricer: lister };
    const enough = (scaled: number) => scaled > 0;
    const priced = await pricesOf(ground, lister, { ...own, mostRounds: ROUNDS, enough });
    return priced === undefined || priced.met <= 0 ? priced?.prices : 'none';
  } finally {
    master.close();
  }
}

/** @returns also the bound there, and the best that was met with on the way */
async function pricesOf(
  { effort }: SearchGround,
  lister: StripLister,
  request: LinearRequest,
): Promise<
  { readonly prices: YieldPrices; readonly scaled: number; readonly met: number } | undefined
> {
  const { answer, rounds, bound: met } = await solveLinear(request);
  effort.rounds += rounds;
  if (answer?.duals === undefined) return undefined;
  // Not the best bound met with, the multipliers of which may tell nothing.
  const { bound } = boundAt(request, answer.duals);
  // Values may have been scaled down for the bound.
  const { multipliers, classCost, scaled } = bound;
  const coin = coinWorth(request.objective, multipliers);
  const { within } = lister.price(multipliers.pieces, coin);
  const prices = { values: multipliers.pieces, coin, best: classCost, within };
  return { prices, scaled, met: met.scaled };
}
