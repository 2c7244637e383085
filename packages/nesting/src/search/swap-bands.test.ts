import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookOf, numbersOf, pieceCounts, someBands } from './random-bands.test.support.js';
import { swapBands } from './swap-bands.js';

describe('swapping bands', () => {
  it('keeps the bands of each slot, whole ones, and lacks of less worth', () => {
    const seen = { better: 0, all: 0 };
    fc.assert(
      fc.property(
        someBands,
        fc.array(fc.nat(2), { minLength: 12, maxLength: 12 }),
        pieceCounts,
        pieceCounts,
        (bands, all, more, less) => {
          const book = bookOf(bands);
          // Bands beyond the last have no count.
          const counts = book.bands.slice(0, -1).map((_, i) => all[i]);
          const made = numbersOf(book, counts);
          const demand = made.map((count, i) => Math.max(0, count + more[i] - less[i]));
          const values = [3, 2, 1];
          const lacking = (some: readonly number[]) =>
            numbersOf(book, some).reduce(
              (sum, count, i) => sum + values[i] * Math.max(0, demand[i] - count),
              0,
            );
          const after = swapBands({ book, counts, demand, values, room: 2 });
          if (after === undefined) return;
          seen.better++;
          if (lacking(after) === 0) seen.all++;
          expect(after).toHaveLength(book.bands.length);
          expect(after.every((count) => Number.isInteger(count) && count >= 0)).toBe(true);
          expect(lacking(after)).toBeLessThan(lacking(counts));
          for (const slot of book.slots.keys()) {
            const inSlot = (some: readonly number[]) =>
              book.bands.reduce(
                (sum, band, i) => sum + (band.slot === slot ? (some[i] ?? 0) : 0),
                0,
              );
            expect(inSlot(after)).toBe(inSlot(counts));
          }
        },
      ),
      { numRuns: 300 },
    );
    expect(seen.better).toBeGreaterThan(30);
    expect(seen.all).toBeGreaterThan(10);
  });

  it('makes up for a piece that lacks by one that is spare', () => {
    const book = bookOf([
      [0, [1, 1, 0]],
      [0, [2, 0, 0]],
      [0, [0, 2, 1]],
    ]);
    // Two of a and two of b are cut; three of a and one of b are wanted.
    const request = { book, counts: [2, 0, 0], values: [3, 2, 1], room: 0 };
    expect(swapBands({ ...request, demand: [3, 1, 0] })).toEqual([1, 1, 0]);
    expect(swapBands({ ...request, demand: [2, 2, 0] })).toBeUndefined();
    expect(swapBands({ ...request, demand: [4, 2, 0] })).toBeUndefined();
  });
});
