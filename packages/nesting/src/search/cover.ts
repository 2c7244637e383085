import type { BandBook } from '../master/band-book.js';
import { BandMaster } from '../master/band-master.js';
import { type LinearResult, solveLinear } from '../master/column-generation.js';
import { coinWorth } from '../master/exact-bound.js';
import { kindsWanted } from '../master/kinds-wanted.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { Pattern } from '../pattern/part.js';
import { solveCheapest } from './cheapest-master.js';
import { compose } from './compose.js';
import type { SearchGround } from './ground.js';
import type { Planned } from './planned.js';

export interface CoverRequest {
  /** Pieces to cut. */
  readonly demand: readonly number[];
  /** Stock that may be used. */
  readonly classes: readonly StockClass[];
  /** What the sheets may cost, and whatever else they must keep to. */
  readonly caps: readonly Cap[];
  /**
   * What going without a piece counts, one for each: the least of that is sought.
   * Absent where all must be cut: the least cost is sought.
   */
  readonly weights: readonly number[] | undefined;
  /** Patterns known to be of use. */
  readonly seeds: readonly Pattern[];
  /** An answer that goes without more is of no use; none when absent. */
  readonly cutoff?: number | undefined;
  /** Nodes that the integer master may take. */
  readonly nodes: number;
  /** Random numbers to shake the values of the pieces by, for more patterns; absent for none. */
  readonly shaken?: (() => number) | undefined;
}

/** Sheet patterns and bands that the integer master works with, those of least reduced cost. */
const SHEETS = 200;
const BANDS = 500;
/** Up to so many kinds of pieces, likely patterns are listed. */
const FEW_KINDS = 16;
/** So many patterns at most. */
const LIKELY = 600;
/** They are listed too where there are so many of each kind, since many patterns then differ by little. */
const MANY_OF_EACH = 4;
/** How often, and by what share at most, values are shaken. */
const SHAKES = 12;
const SHAKE = 0.5;
/** Rounds of column generation before the integer master. */
const ROUNDS = 20;

export interface Covered {
  /** Undefined where none is of use. */
  readonly planned: readonly Planned[] | undefined;
  /** True where there is no better answer with these patterns. */
  readonly best: boolean;
}

/**
 * Cuts as much of a small demand as the caps allow: generates patterns for it by
 * the linear master, then solves the integer master for the least weight of
 * pieces gone without, or for the least cost.
 */
export async function cover(ground: SearchGround, request: CoverRequest): Promise<Covered> {
  const { demand, classes, caps, weights, nodes } = request;
  const { objective, engines } = ground;
  const book = ground.newBook();
  for (const pattern of request.seeds) book.addPattern(pattern);
  const linear = new BandMaster({
    classes,
    demand,
    objective,
    penalties: ground.penalties,
    book,
    engines,
  });
  let result: LinearResult;
  try {
    result = await solveLinear({
      ...ground,
      pricer: ground.pricerFor(demand),
      classes,
      demand,
      book,
      master: linear,
      enough: () => false,
      mostRounds: ROUNDS,
    });
    ground.effort.rounds += result.rounds;
    addLikely(ground, book, request, result);
    if (request.shaken !== undefined) addShaken(ground, book, demand, result, request.shaken);
  } finally {
    linear.close();
  }
  const { answer, best } = await solveCheapest(ground, {
    book,
    demand,
    classes,
    caps,
    weights,
    duals: result.answer?.duals,
    sheets: SHEETS,
    bands: BANDS,
    cutoff: request.cutoff,
    nodes,
  });
  if (answer === undefined) return { planned: undefined, best };
  const planned = compose(book, answer).map(([pattern, count]) => ({ pattern, count }));
  return { planned, best };
}

/**
 * Adds the patterns that fall short of the best by least, where there are few kinds
 * of pieces: for many kinds, those that came up on the way serve as well.
 */
function addLikely(
  ground: SearchGround,
  book: BandBook,
  { demand, caps }: CoverRequest,
  { bound }: LinearResult,
): void {
  const kinds = kindsWanted(demand);
  const copies = demand.reduce((sum, quantity) => sum + quantity, 0);
  if (kinds > FEW_KINDS && copies < MANY_OF_EACH * kinds) return;
  const pricer = ground.pricerFor(demand);
  if (pricer.within === undefined) return;
  const { pieces } = bound.multipliers;
  const cap = caps.find(({ measure }) => measure === ground.objective.cost);
  const room = (cap?.atMost ?? 0) * ground.scale - bound.scaled;
  for (let gap = Math.max(room, ground.scale); gap >= 1; gap = Math.floor(gap / 2)) {
    if (ground.deadline.left() <= 0) return;
    const list = pricer.within(pieces, bound.classCost, gap, LIKELY);
    if (list === undefined) continue;
    book.addList(list);
    return;
  }
}

/** Adds patterns that are best at values close to the duals of the linear plan. */
function addShaken(
  ground: SearchGround,
  book: BandBook,
  demand: readonly number[],
  { bound }: LinearResult,
  random: () => number,
): void {
  const pricer = ground.pricerFor(demand);
  for (let i = 0; i < SHAKES && ground.deadline.left() > 0; i++) {
    const values = bound.multipliers.pieces.map((value) =>
      Math.floor(value * (1 + SHAKE * (random() - 0.5))),
    );
    const priced = pricer.price(values, coinWorth(ground.objective, bound.multipliers));
    priced.worth.forEach((_, box) => {
      for (const { pattern } of priced.patterns(box)) {
        book.addPattern(ground.proper(pattern, demand));
      }
    });
  }
}
