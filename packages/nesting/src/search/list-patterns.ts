import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import { boundAt } from '../master/column-generation.js';
import { exactScale } from '../master/exact-bound.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';
import { leastOfEach } from './least-of-each.js';
import { jointCosts } from './reduced-costs.js';

export interface PatternListRequest {
  /** Patterns of the linear plan. */
  readonly pool: BandBook;
  readonly caps: readonly Cap[];
  /** For each piece, what going without one counts, 1 on average. */
  readonly losses: readonly number[];
  /** The stock, its supplies settled, and the linear plan that counts spare pieces. */
  readonly classes: readonly StockClass[];
  readonly answer: BandAnswer;
  /** Patterns that are listed at most. */
  readonly most: number;
}

/** What patterns may lose at first, in measures of spare pieces, and how that shrinks. */
const MAY_LOSE = 0.02;
const MUST_LIST = 5e-4;
const CLOSER = 1.4;
/** Patterns that are chosen of them; of these, the share at most of one stock, or of one slot. */
const SHEETS = 1_500;
const BANDS = 4_000;
const MOST_OF_STOCK = 0.4;
const MOST_OF_SLOT = 0.04;
const EPSILON = 1e-6;

/**
 * The patterns that lose least against a linear plan that counts spare pieces, out of all
 * there are and not only of those that came up.
 * @returns undefined where patterns cannot be listed
 */
export function listPatterns(
  ground: SearchGround,
  { pool, caps, losses, classes, answer, most }: PatternListRequest,
): BandBook | undefined {
  const { demand, pricer } = ground;
  const { duals } = answer;
  if (duals === undefined || pricer.within === undefined) return undefined;
  // No multiplier of a piece is more than what going without it counts.
  const allLost = demand.reduce((sum, quantity, piece) => sum + quantity * losses[piece], 0);
  const scale = exactScale(2 * allLost);
  const objective = { cost: undefined, caps };
  const { multipliers, priced, bound } = boundAt({ ...ground, classes, objective, scale }, duals);
  // Of sheets that the linear plan does without, the best patterns are of use as well.
  const least = bound.classCost.map((cost, box) => Math.min(cost, priced.worth[box]));
  for (let gap = MAY_LOSE * scale; gap >= MUST_LIST * scale; gap /= CLOSER) {
    if (ground.deadline.left() <= 0) return undefined;
    const list = pricer.within(multipliers.pieces, least, Math.floor(gap), most);
    if (list === undefined) continue;
    const book = ground.newBook();
    book.addList(list);
    const used = (amounts: readonly number[]) =>
      [...amounts.keys()].filter((index) => amounts[index] > EPSILON);
    book.adopt(pool, used(answer.bands), used(answer.sheets));
    return bestOf(ground, book, { ...duals, slots: bestInSlots(book, duals.pieces) });
  }
  return undefined;
}

/** By slot, what the best band in it is worth. */
export function bestInSlots(book: BandBook, values: readonly number[]): readonly number[] {
  const best = book.slots.map(() => 0);
  for (const { slot, counts } of book.bands) {
    const worth = counts.reduce((sum, [piece, copies]) => sum + values[piece] * copies, 0);
    best[slot] = Math.max(best[slot], worth);
  }
  return best;
}

function bestOf(
  ground: SearchGround,
  all: BandBook,
  duals: NonNullable<BandAnswer['duals']>,
): BandBook {
  const costs = jointCosts(all, duals);
  const slotOf = (band: number) => all.bands[band].slot;
  const boxOf = (sheet: number) => all.sheets[sheet].box;
  const bands = leastOfEach(costs.bands, [], BANDS, MOST_OF_SLOT, slotOf);
  const sheets = leastOfEach(costs.sheets, [], SHEETS, MOST_OF_STOCK, boxOf);
  const best = ground.newBook();
  best.adopt(all, bands, sheets);
  return best;
}
