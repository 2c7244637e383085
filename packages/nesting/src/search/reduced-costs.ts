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
