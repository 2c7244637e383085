import type { BandBook } from '../master/band-book.js';
import { type BandDuals, BandMaster } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';
import { type Listing, withLikelyBands } from './likely-bands.js';
import { leastFirst, reducedCosts } from './reduced-costs.js';
import type { SettledMaster } from './settled-master.js';

/** Whole sheets and bands. */
export interface Cut {
  readonly book: BandBook;
  readonly sheets: readonly number[];
  readonly bands: readonly number[];
}

export interface LastBandsRequest {
  readonly classes: readonly StockClass[];
  readonly caps: readonly Cap[];
  /** What going without a piece counts. */
  readonly weights: readonly number[];
  /** That of the settled master, and by its sheets how many are cut. */
  readonly book: BandBook;
  readonly sheets: readonly number[];
  /** Of the linear plan of what is settled. */
  readonly duals: BandDuals;
}

/** Bands that are listed for a slot. */
const LISTED: Listing = { most: 80, short: 0.02 };
/** Bands that the integer master works with, and nodes it may take. */
const BANDS = 800;
const NODES = 150;
/** How far from the best an answer may be by which less is gone without. */
const GOOD_ENOUGH = 0.3;
/** Share of the time left that it may take. */
const SHARE_OF_TIME = 0.25;

/**
 * Fills the slots that settled bands leave open by an integer master over the likeliest bands,
 * going without as little as may be.
 * @returns all bands with their book, which begins with the sheets of the one before; undefined
 *   where none were found in time
 */
export async function settleLastBands(
  ground: SearchGround,
  { classes, caps, weights, book: known, sheets, duals }: LastBandsRequest,
  { left, needed, bands: settled }: Pick<SettledMaster, 'left' | 'needed' | 'bands'>,
): Promise<Cut | undefined> {
  const { engines, deadline, effort } = ground;
  const book = withLikelyBands(ground, known, left, duals, LISTED);
  const here = (slot: number) => book.find(known.slots[slot]) ?? 0;
  const slotDuals: number[] = [];
  const slotsNeeded: number[] = [];
  known.slots.forEach((_, slot) => {
    slotDuals[here(slot)] = duals.slots[slot] ?? 0;
    slotsNeeded[here(slot)] = needed[slot] ?? 0;
  });
  const master = new BandMaster({
    demand: left,
    classes,
    objective: { cost: undefined, caps },
    penalties: weights,
    packs: true,
    needed: slotsNeeded,
    book,
    engines,
  });
  try {
    const costs = reducedCosts(book, { ...duals, slots: slotDuals }, (_, copies) => copies);
    const ofUse = costs.bands.map((cost, band) =>
      book.bands[band].counts.every(([piece, copies]) => copies <= left[piece])
        ? cost
        : Number.POSITIVE_INFINITY,
    );
    master.addFromBook(undefined, leastFirst(ofUse, BANDS));
    sheets.forEach((count, sheet) => {
      master.setLeastOfSheet(sheet, count);
    });
    effort.integerMasters++;
    const answer = await master.solve({
      integer: true,
      seconds: deadline.left() * SHARE_OF_TIME,
      nodes: NODES,
      gap: GOOD_ENOUGH,
    });
    if (typeof answer === 'string') return undefined;
    const bands = book.bands.map((_, band) => (settled[band] ?? 0) + answer.bands[band]);
    return { book, sheets: answer.sheets, bands };
  } finally {
    master.close();
  }
}
