import type { BandBook } from '../master/band-book.js';
import type { BandDuals } from '../master/band-master.js';

/**
 * What each pattern of a book costs beyond its worth at the duals of a linear plan.
 * @param ofUse how many of so many copies of a piece are of use
 */
export function reducedCosts(
  book: BandBook,
  duals: BandDuals,
  ofUse: (piece: number, copies: number) => number,
): { readonly sheets: readonly number[]; readonly bands: readonly number[] } {
  const slot = (index: number) => duals.slots[index] ?? 0;
  return {
    sheets: book.sheets.map(({ box, slots, kept }) =>
      slots.reduce((sum, [at, count]) => sum - slot(at) * count, duals.classes[box] - kept),
    ),
    bands: book.bands.map((band) =>
      band.counts.reduce(
        (sum, [piece, copies]) => sum - duals.pieces[piece] * ofUse(piece, copies),
        slot(band.slot) - band.kept,
      ),
    ),
  };
}

/** Indices of the `most` least costs, the least first; infinite ones are left out. */
export function leastFirst(costs: readonly number[], most: number): readonly number[] {
  return [...costs.keys()]
    .filter((index) => costs[index] < Number.POSITIVE_INFINITY)
    .sort((a, b) => compare(costs[a], costs[b]) || a - b)
    .slice(0, most);
}

/** Infinities of one sign are alike; their difference would be no number. */
function compare(a: number, b: number): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/**
 * What using each pattern costs beyond its worth at the duals, with the other level
 * that it cannot do without: a band with the best sheet that has its slot, a sheet
 * with the best bands in all of its slots. Slots that no good sheet has are cheap by
 * themselves, so that reduced costs alone tell little.
 */
export function jointCosts(
  book: BandBook,
  duals: BandDuals,
): { readonly sheets: readonly number[]; readonly bands: readonly number[] } {
  const alone = reducedCosts(book, duals, (_, copies) => copies);
  const ofSheet = new Array<number>(book.slots.length).fill(Number.POSITIVE_INFINITY);
  const ofBand = [...ofSheet];
  book.sheets.forEach(({ slots }, sheet) => {
    for (const [slot] of slots) ofSheet[slot] = Math.min(ofSheet[slot], alone.sheets[sheet]);
  });
  book.bands.forEach(({ slot }, band) => {
    ofBand[slot] = Math.min(ofBand[slot], alone.bands[band]);
  });
  const [sheetIn, bandIn] = [[...ofSheet], [...ofBand]];
  book.slots.forEach((_, narrow) => {
    book.slots.forEach((_, wide) => {
      if (!book.mayLieIn(narrow, wide)) return;
      const lost = Math.max(0, (duals.slots[wide] ?? 0) - (duals.slots[narrow] ?? 0));
      sheetIn[narrow] = Math.min(sheetIn[narrow], ofSheet[wide] + lost);
      bandIn[wide] = Math.min(bandIn[wide], ofBand[narrow] + lost);
    });
  });
  return {
    bands: alone.bands.map((cost, band) => cost + sheetIn[book.bands[band].slot]),
    sheets: alone.sheets.map((cost, sheet) =>
      book.sheets[sheet].slots.reduce((sum, [slot, count]) => sum + bandIn[slot] * count, cost),
    ),
  };
}
