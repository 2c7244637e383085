import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import { countsOf } from '../pattern/walk-part.js';
import { solveCheapest } from './cheapest-master.js';
import { compose } from './compose.js';
import type { Covered } from './cover.js';
import type { SearchGround } from './ground.js';
import type { Planned } from './planned.js';
import type { SettledMaster } from './settled-master.js';
import { likelyDivisions } from './sheet-divisions.js';

export interface RestRequest {
  readonly classes: readonly StockClass[];
  readonly caps: readonly Cap[];
  /** What going without a piece counts. */
  readonly weights: readonly number[];
  /** An answer that goes without more is of no use; none when undefined. */
  readonly cutoff?: number | undefined;
}

/** Patterns that the integer master works with, and nodes it may take: to better a plan, and for a first one. */
const SMALL = { sheets: 120, bands: 150, nodes: 20 };
const LARGE = { sheets: 400, bands: 400, nodes: 50 };
/** Bands, and divisions of a face, that are listed for it, and by what share of a sheet they may fall short. */
const LISTED_BANDS = 200;
const LISTED_DIVISIONS = 60;
const LISTED_SHORT = 0.3;

/** Cuts what is open by an integer master over the likeliest patterns. */
export async function settleRest(
  ground: SearchGround,
  request: RestRequest,
  master: SettledMaster,
  book: BandBook,
  { duals }: BandAnswer,
): Promise<Covered> {
  const { classes, caps, weights, cutoff } = request;
  if (duals !== undefined) {
    const gap = LISTED_SHORT * Math.max(0, ...duals.classes);
    addLikelyBands(ground, book, master.left, duals, gap);
    const divisions = likelyDivisions(ground, book, duals, master.needed, gap, LISTED_DIVISIONS);
    for (const division of divisions) book.addSheet(division);
  }
  const { answer, best } = await solveCheapest(ground, {
    book,
    demand: master.left,
    classes,
    caps,
    weights,
    duals,
    ...(request.cutoff === undefined ? LARGE : SMALL),
    needed: master.needed,
    settled: master.sheets,
    cutoff,
  });
  if (answer === undefined) return { planned: undefined, best };
  const bands = book.bands.map((_, band) => (master.bands[band] ?? 0) + answer.bands[band]);
  const planned = compose(book, { sheets: answer.sheets, bands }).map(
    ([pattern, count]): Planned => ({ pattern, count }),
  );
  return { planned, best };
}

/** Adds bands of the pieces left that fall short of gaining by at most a gap. */
function addLikelyBands(
  ground: SearchGround,
  book: BandBook,
  left: readonly number[],
  duals: NonNullable<BandAnswer['duals']>,
  gap: number,
): void {
  const { scale } = ground;
  const pricer = ground.pricerFor(left);
  if (pricer.within === undefined) return;
  const values = duals.pieces.map((dual, piece) =>
    left[piece] > 0 ? Math.max(0, Math.floor(dual * scale)) : 0,
  );
  const prices = duals.classes.map((dual) => Math.floor(Math.max(0, dual) * scale));
  for (let short = Math.floor(gap * scale); short >= 1; short = Math.floor(short / 2)) {
    const list = pricer.within(values, prices, short, LISTED_BANDS);
    if (list === undefined) continue;
    for (const band of list.bands) {
      const slot = book.slot(band.box, band.cuts, band.extent);
      const worth = countsOf(band.part).reduce(
        (sum, [piece, copies]) => sum + values[piece] * Math.min(copies, left[piece]),
        0,
      );
      if ((duals.slots[slot] ?? 0) * scale - worth <= short) book.addBand(band);
    }
    return;
  }
}
