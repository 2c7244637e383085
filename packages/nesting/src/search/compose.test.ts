import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BandBook } from '../master/band-book.js';
import type { Pattern } from '../pattern/part.js';
import { compose } from './compose.js';

const lays = [0, 1].map((piece) => ({ piece, turned: false, length: 3, width: 2 + piece }));
const box = { length: 12, width: 10, firstCuts: ['along', 'across'] as const, lays };
const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };

/** Two kinds of bands 3 wide, one 2 wide; sheets of three, of two and of one wide slot with two narrow ones. */
function filledBook() {
  const book = new BandBook([box], limits);
  const band = (extent: number, ones: number, twos: number) =>
    book.addBand({
      box: 0,
      cuts: 'along',
      extent,
      part: {
        kind: 'split',
        cuts: 'across',
        parts: [...new Array(ones).fill(0), ...new Array(twos).fill(1)].map((piece) => ({
          extent: 3,
          part: { kind: 'lay', piece, turned: false },
        })),
      },
    });
  const bands = [band(3, 0, 4), band(3, 2, 2), band(2, 4, 0)];
  const [wide, narrow] = [book.slot(0, 'along', 3), book.slot(0, 'along', 2)];
  const slots = [
    [[wide, 3]],
    [[wide, 2]],
    [
      [wide, 2],
      [narrow, 2],
    ],
  ] as [number, number][][];
  const sheets = slots.map((each) =>
    book.addSheet({ box: 0, cuts: 'along', slots: each, kept: 0 }),
  );
  return { book, bands, sheets };
}

function copies(composed: readonly (readonly [Pattern, number])[], piece: number): number {
  return composed.reduce(
    (sum, [{ counts }, amount]) => sum + amount * (new Map(counts).get(piece) ?? 0),
    0,
  );
}

describe('compose', () => {
  const amount = fc.nat(9);
  const share = fc.double({ min: 0, max: 1, noNaN: true });

  it('puts every band into a sheet, whole amounts into whole sheets', () => {
    fc.assert(
      fc.property(amount, amount, amount, share, share, share, (a, b, c, x, y, z) => {
        const { book } = filledBook();
        const wide = 3 * a + 2 * b + 2 * c;
        const first = Math.floor(wide * x);
        const second = Math.floor((wide - first) * y);
        // Narrow bands also go where a wide slot is left free.
        const third = Math.floor((2 * c + wide - first - second) * z);
        const composed = compose(book, { sheets: [a, b, c], bands: [first, second, third] });
        expect(copies(composed, 0)).toBe(2 * second + 4 * third);
        expect(copies(composed, 1)).toBe(4 * first + 2 * second);
        const used = composed.reduce((sum, [, count]) => sum + count, 0);
        expect(used).toBeLessThanOrEqual(a + b + c);
        for (const [{ part }, count] of composed) {
          expect(Number.isInteger(count)).toBe(true);
          expect(count).toBeGreaterThan(0);
          if (part.kind !== 'split') throw new Error('a sheet is divided');
          expect(part.parts.reduce((sum, { extent }) => sum + extent, 0)).toBeLessThanOrEqual(10);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('gives back broken amounts of a linear plan', () => {
    fc.assert(
      fc.property(share, share, share, share, (a, b, x, y) => {
        const { book } = filledBook();
        const wide = 3 * a + 2 * b;
        const [first, second] = [wide * x, wide * (1 - x) * y];
        const composed = compose(book, { sheets: [a, b, 0], bands: [first, second, 0] });
        expect(copies(composed, 0)).toBeCloseTo(2 * second, 4);
        expect(copies(composed, 1)).toBeCloseTo(4 * first + 2 * second, 4);
        const used = composed.reduce((sum, [, count]) => sum + count, 0);
        expect(used).toBeLessThanOrEqual(a + b + 1e-4);
      }),
      { numRuns: 500 },
    );
  });

  it('makes few different sheets: what there is most of goes in first', () => {
    const { book } = filledBook();
    const composed = compose(book, { sheets: [3, 0, 0], bands: [6, 3, 0] });
    expect(composed.map(([, count]) => count)).toEqual([2, 1]);
    expect(composed.map(([{ counts }]) => counts)).toEqual([
      [[1, 12]],
      [
        [0, 6],
        [1, 6],
      ],
    ]);
    // Sheets for which no bands are left are left out.
    expect(compose(book, { sheets: [5, 0, 0], bands: [4, 0, 0] }).map(([, n]) => n)).toEqual([
      1, 1,
    ]);
  });
});
