import type { BandBook } from '../master/band-book.js';
import { type BandAnswer, type BandDuals, BandMaster } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';
import { leastFirst, reducedCosts } from './reduced-costs.js';

export interface CheapestRequest {
  readonly book: BandBook;
  readonly demand: readonly number[];
  readonly classes: readonly StockClass[];
  readonly caps: readonly Cap[];
  /** What going without a piece counts, the least of which is sought; absent for the least cost. */
  readonly weights: readonly number[] | undefined;
  /** Of the linear plan; absent where all patterns of the book are to be tried. */
  readonly duals: BandDuals | undefined;
  /** Sheet patterns and bands to try, those of least reduced cost. */
  readonly sheets: number;
  readonly bands: number;
  /** By slot, how many are needed for bands that are settled. */
  readonly needed?: readonly number[];
  /** By index, how many of each sheet pattern are settled. */
  readonly settled?: readonly number[];
  /** An answer above this is of no use. */
  readonly cutoff: number | undefined;
  /** Nodes that it may take. */
  readonly nodes: number;
}

export interface CheapestAnswer {
  /** Undefined where none keeps to the cutoff, or none was found in time. */
  readonly answer: BandAnswer | undefined;
  /** True where there is none that is better by more than is worth looking for. */
  readonly best: boolean;
}

/** How far from the best an answer may be by which less is gone without. */
const GOOD_ENOUGH = 0.3;
/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.15;

/** Solves the integer master over the patterns that cost least at the duals of a linear plan. */
export async function solveCheapest(
  ground: SearchGround,
  request: CheapestRequest,
): Promise<CheapestAnswer> {
  const { book, demand, classes, caps, weights, needed, cutoff, nodes } = request;
  const { objective, engines, deadline, effort } = ground;
  const master = new BandMaster({
    classes,
    demand,
    objective: { cost: weights === undefined ? objective.cost : undefined, caps },
    ...(weights === undefined ? {} : { penalties: weights }),
    ...(needed === undefined ? {} : { needed }),
    packs: true,
    book,
    engines,
  });
  effort.integerMasters++;
  try {
    const settled = (request.settled ?? []).map((count) => count ?? 0);
    const chosen = cheapest(request, settled);
    master.addFromBook(chosen.sheets, chosen.bands);
    settled.forEach((count, sheet) => {
      if (count > 0) master.setLeastOfSheet(sheet, count);
    });
    const answer = await master.solve({
      integer: true,
      seconds: deadline.left() * SHARE_OF_TIME,
      nodes,
      // What is sought counts in whole numbers.
      ...(cutoff === undefined ? {} : { cutoff: cutoff + 0.5 }),
      gap: weights === undefined ? 0 : GOOD_ENOUGH,
    });
    if (answer === 'infeasible') return { answer: undefined, best: true };
    if (answer === 'stopped') return { answer: undefined, best: false };
    return { answer, best: answer.status === 'optimal' };
  } finally {
    master.close();
  }
}

function cheapest(
  { book, duals, demand, sheets, bands }: CheapestRequest,
  settled: readonly number[],
): { readonly sheets: readonly number[]; readonly bands: readonly number[] } {
  if (duals === undefined) {
    return { sheets: [...book.sheets.keys()], bands: [...book.bands.keys()] };
  }
  const costs = reducedCosts(book, duals, (piece, copies) => Math.min(copies, demand[piece]));
  const wanted = (band: number) => book.bands[band].counts.some(([piece]) => demand[piece] > 0);
  const sheetCosts = costs.sheets.map((cost, sheet) =>
    settled[sheet] > 0 ? Number.NEGATIVE_INFINITY : cost,
  );
  const bandCosts = costs.bands.map((cost, band) =>
    wanted(band) ? cost : Number.POSITIVE_INFINITY,
  );
  return { sheets: leastFirst(sheetCosts, sheets), bands: leastFirst(bandCosts, bands) };
}
