import fc from 'fast-check';
import type { BandBook } from '../master/band-book.js';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';

const PIECES = 3;
const { ground } = groundOf({
  pieces: [piece('a', 30, 5, 9), piece('b', 20, 5, 9), piece('c', 10, 5, 9)],
  stock: [sheet('s', 120, 30, { price: 7 })],
  shear: { firstCut: 'along' },
});

/** Copies of each of the three pieces in a band. */
export const pieceCounts = fc.tuple(fc.nat(2), fc.nat(2), fc.nat(3));
/** Bands of two slots. */
export const someBands = fc.array(fc.tuple(fc.nat(1), pieceCounts), {
  minLength: 2,
  maxLength: 12,
});

/** A book of bands, their pieces beside one another. */
export function bookOf(bands: readonly (readonly [number, readonly number[]])[]): BandBook {
  const book = ground.newBook();
  for (const [slot, copies] of bands) {
    const parts = copies.flatMap((count, i) =>
      new Array(count).fill({
        extent: [30, 20, 10][i],
        part: { kind: 'lay', piece: i, turned: false },
      } as const),
    );
    const extent = 5 + slot;
    book.addBand({
      box: 0,
      cuts: 'along',
      extent,
      part: { kind: 'split', cuts: 'across', parts },
    });
  }
  return book;
}

/** Copies of each piece that so many of each band cut. */
export const numbersOf = (book: BandBook, counts: readonly number[]) =>
  Array.from({ length: PIECES }, (_, piece) =>
    book.bands.reduce((sum, band, index) => {
      const copies = band.counts.find(([i]) => i === piece)?.[1] ?? 0;
      return sum + copies * (counts[index] ?? 0);
    }, 0),
  );
