import type { BandBook } from '../master/band-book.js';

/** Adds a band of the first box to a book: so many copies of each piece beside one another. */
export function addBand(
  book: BandBook,
  lengths: readonly number[],
  copies: readonly number[],
  width: number,
): void {
  const parts = copies.flatMap((count, i) =>
    Array.from({ length: count }, () => ({
      extent: lengths[i],
      part: { kind: 'lay', piece: i, turned: false } as const,
    })),
  );
  const part = { kind: 'split', cuts: 'across', parts } as const;
  book.addBand({ box: 0, cuts: 'along', extent: width, part });
}
