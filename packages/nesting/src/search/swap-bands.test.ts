import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandBook } from '../master/band-book.js';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { BandSwaps } from './band-swaps.js';
import { groundOf } from './ground.test.support.js';
import { swapBands } from './swap-bands.js';

const PIECES = 3;
const { ground } = groundOf({
  pieces: [piece('a', 30, 5, 9), piece('b', 20, 5, 9), piece('c', 10, 5, 9)],
  stock: [sheet('s', 120, 30, { price: 7 })],
  shear: { firstCut: 'along' },
});

/** Bands of two slots, of all the pieces that such a strip holds: a strip of a, b and c beside one another. */
const pieceCounts = fc.tuple(fc.nat(2), fc.nat(2), fc.nat(3));
const someBands = fc.array(fc.tuple(fc.nat(1), pieceCounts), { minLength: 2, maxLength: 12 });

function bookOf(bands: readonly (readonly [number, readonly number[]])[]): BandBook {
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

const numbersOf = (book: BandBook, counts: readonly number[]) =>
  Array.from({ length: PIECES }, (_, piece) =>
    book.bands.reduce((sum, band, index) => {
      const copies = band.counts.find(([i]) => i === piece)?.[1] ?? 0;
      return sum + copies * (counts[index] ?? 0);
    }, 0),
  );

/** All counts that one or two swaps lead to, tried one by one. */
function afterTwoSwaps(book: BandBook, counts: readonly number[]): readonly (readonly number[])[] {
  const once = (from: readonly number[]) =>
    book.bands.flatMap(({ slot }, band) =>
      (from[band] ?? 0) <= 0
        ? []
        : book.bands.flatMap((other, to) =>
            other.slot !== slot || to === band
              ? []
              : [book.bands.map((_, i) => (from[i] ?? 0) - Number(i === band) + Number(i === to))],
          ),
    );
  const one = once(counts);
  // The second band was there before the first was put in its place.
  return [...one, ...one.flatMap((next) => once(next))];
}

describe('BandSwaps', () => {
  it('finds one swap or two that make a change just where there are such', () => {
    const seen = { one: 0, two: 0, none: 0 };
    fc.assert(
      fc.property(
        someBands,
        fc.array(fc.nat(2), { minLength: 12, maxLength: 12 }),
        fc.tuple(
          fc.integer({ min: -2, max: 2 }),
          fc.integer({ min: -2, max: 2 }),
          fc.integer({ min: -2, max: 2 }),
        ),
        (bands, all, change) => {
          const book = bookOf(bands);
          const counts = book.bands.map((_, i) => all[i]);
          const before = numbersOf(book, counts);
          const wanted = before.map((count, i) => count + change[i]).join();
          const possible = afterTwoSwaps(book, counts).some(
            (after) => numbersOf(book, after).join() === wanted,
          );
          const found = new BandSwaps(book, counts).find(Int32Array.from(change));
          // Swaps one after the other may use the same band twice; found ones are all of bands that were there.
          if (found === undefined) {
            if (change.some((copies) => copies !== 0)) expect(possible).toBe(false);
            seen.none++;
            return;
          }
          seen[found.length === 1 ? 'one' : 'two']++;
          const after = [...counts];
          for (const { from, to } of found) {
            expect(book.bands[from].slot).toBe(book.bands[to].slot);
            after[from]--;
            after[to]++;
          }
          expect(after.every((count) => count >= 0)).toBe(true);
          expect(numbersOf(book, after).join()).toBe(wanted);
        },
      ),
      { numRuns: 400 },
    );
    expect(seen.one).toBeGreaterThan(20);
    expect(seen.two).toBeGreaterThan(20);
    expect(seen.none).toBeGreaterThan(20);
  });
});

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
