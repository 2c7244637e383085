import type { BandBook } from '../master/band-book.js';
import type { BandDuals } from '../master/band-master.js';
import { reducedCosts } from './reduced-costs.js';

/** A band in a slot that it may lie in: its own, or a wider one whose rest is left over. */
export interface BandPlace {
  /** Index of the band, and of the slot, in their book. */
  readonly band: number;
  readonly slot: number;
  /** [index of the piece, copies] of the band, ascending. */
  readonly copies: readonly (readonly [number, number])[];
  /** What the slot is worth beyond the band's pieces, at least 0. */
  readonly loss: number;
}

/**
 * The places of bands in which they lose no more than so much against a linear plan, the same
 * pieces once in each slot.
 * @param counts by slot, how many there are; slots that there are none of have no places
 * @param duals of the linear plan, by piece and by slot of the book
 */
export function bandPlaces(
  book: BandBook,
  counts: readonly number[],
  duals: BandDuals,
  atMost: number,
): readonly BandPlace[] {
  const { bands: losses } = reducedCosts(book, duals, (_, copies) => copies);
  const wider = book.slots.map((_, slot) =>
    book.alike(slot).filter((other) => other === slot || book.mayLieIn(slot, other)),
  );
  const known = new Set<string>();
  return book.bands.flatMap(({ slot: own, counts: copies }, band) => {
    const pieces = copies.join(' ');
    return wider[own].flatMap((slot): readonly BandPlace[] => {
      const loss = losses[band] + duals.slots[slot] - duals.slots[own];
      const key = `${slot} ${pieces}`;
      if (counts[slot] <= 0 || loss > atMost || known.has(key)) return [];
      known.add(key);
      return [{ band, slot, copies, loss: Math.max(0, loss) }];
    });
  });
}
