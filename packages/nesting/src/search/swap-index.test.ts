import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandBook } from '../master/band-book.js';
import { bookOf, numbersOf, someBands } from './random-bands.test.support.js';
import { SwapIndex } from './swap-index.js';

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

/** Whether three swaps of bands that were all there make a change, by trying all. */
function threeMake(book: BandBook, counts: readonly number[], change: readonly number[]): boolean {
  const swaps = book.bands.flatMap(({ slot }, from) =>
    book.bands.flatMap((other, to) => (other.slot === slot && to !== from ? [{ from, to }] : [])),
  );
  const changes = swaps.map(({ from, to }) => {
    const [before, after] = [from, to].map((band) =>
      numbersOf(
        book,
        book.bands.map((_, i) => Number(i === band)),
      ),
    );
    return after.map((count, i) => count - before[i]);
  });
  return swaps.some((one, i) =>
    swaps.some((two, j) =>
      swaps.some((three, k) => {
        if (!change.every((c, p) => c === changes[i][p] + changes[j][p] + changes[k][p])) {
          return false;
        }
        return [one, two, three].every(
          ({ from }) =>
            [one, two, three].filter((other) => other.from === from).length <= (counts[from] ?? 0),
        );
      }),
    ),
  );
}

describe('SwapIndex', () => {
  it('finds three swaps that make a change just where there are such', () => {
    const seen = { found: 0, none: 0, stopped: 0 };
    fc.assert(
      fc.property(
        fc.tuple(someBands, fc.array(fc.nat(2), { minLength: 12, maxLength: 12 })),
        fc.tuple(
          fc.integer({ min: -3, max: 3 }),
          fc.integer({ min: -3, max: 3 }),
          fc.integer({ min: -3, max: 3 }),
        ),
        fc.tuple(fc.nat(5), fc.nat(5), fc.nat(5)),
        ([bands, all], change, values) => {
          const book = bookOf(bands.slice(0, 8));
          const counts = book.bands.map((_, i) => all[i]);
          const index = new SwapIndex(book, counts, values);
          const wanted = Int32Array.from(change);
          const found = index.findThree(wanted, { left: 1_000_000 });
          expect(found !== undefined).toBe(threeMake(book, counts, change));
          const steps = { left: 1 };
          const hasty = index.findThree(wanted, steps);
          if (found !== undefined && hasty === undefined) {
            expect(steps.left).toBeLessThan(0);
            seen.stopped++;
          }
          if (found === undefined) {
            seen.none++;
            return;
          }
          seen.found++;
          const after = [...counts];
          for (const { from, to } of found) {
            expect(book.bands[from].slot).toBe(book.bands[to].slot);
            after[from]--;
            after[to]++;
          }
          expect(found).toHaveLength(3);
          const before = numbersOf(book, counts);
          expect(numbersOf(book, after)).toEqual(before.map((count, i) => count + change[i]));
        },
      ),
      { numRuns: 400 },
    );
    expect(seen.found).toBeGreaterThan(40);
    expect(seen.none).toBeGreaterThan(40);
    expect(seen.stopped).toBeGreaterThan(5);
  });

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
          const found = new SwapIndex(book, counts, [3, 2, 1]).find(Int32Array.from(change));
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
