import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { seededRandom } from '../random.js';
import { annealSheets } from './anneal-sheets.js';
import { groundOf } from './ground.test.support.js';
import { RoomCuts } from './room-cuts.js';

const { ground } = groundOf({
  pieces: [piece('a', 37, 5, 9), piece('b', 29, 4, 14)],
  stock: [sheet('s', 90, 30, { price: 7 }), sheet('t', 60, 25, { price: 4 })],
  shear: { firstCut: 'along' },
});

/** Sheets of two sorts of stock, of three patterns each; only what cuts say of them counts. */
const PATTERNS = 3;
const book = ground.newBook();
for (const box of [0, 1]) {
  for (let i = 0; i < PATTERNS; i++) {
    const slot = book.slot(box, 'along', 5 + i);
    book.addSheet({ box, cuts: 'along', slots: [[slot, 1]], kept: 0 });
  }
}
const alternatives = book.sheets.map(({ box }) =>
  [...book.sheets.keys()].filter((other) => book.sheets[other].box === box),
);

const worth = fc.array(fc.nat(6), { minLength: book.slots.length, maxLength: book.slots.length });
const cutsOf = (all: readonly { room: number; worth: readonly number[] }[]) => {
  const cuts = new RoomCuts(book);
  for (const cut of all) cuts.add(cut, new Float64Array(book.slots.length));
  return cuts;
};

/** All ways to cut the sheets of the start, at most so many of them otherwise. */
function within(start: readonly number[], changes: number): readonly (readonly number[])[] {
  const ways = start.reduce<readonly (readonly number[])[]>(
    (before, sheet) => before.flatMap((some) => alternatives[sheet].map((to) => [...some, to])),
    [[]],
  );
  const numbers = (sheets: readonly number[]) =>
    book.sheets.map((_, pattern) => sheets.filter((sheet) => sheet === pattern).length);
  const first = numbers(start);
  return ways
    .map(numbers)
    .filter(
      (counts) =>
        counts.reduce((sum, count, i) => sum + Math.max(0, count - first[i]), 0) <= changes,
    );
}

describe('annealing sheets', () => {
  it('reaches a goal that trying all ways reaches, and no other', () => {
    const seen = { reached: 0, beyond: 0 };
    fc.assert(
      fc.property(
        fc.array(fc.record({ room: fc.integer({ min: -20, max: 0 }), worth }), {
          minLength: 1,
          maxLength: 4,
        }),
        fc.array(fc.nat(2 * PATTERNS - 1), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: -15, max: 10 }),
        fc.nat(1000),
        (all, start, changes, goal, seed) => {
          const cuts = cutsOf(all);
          const roomOf = (numbers: readonly number[]) =>
            Math.min(...all.map((_, cut) => cuts.mostBy(cut, numbers)));
          const possible = within(start, changes);
          const best = Math.max(...possible.map(roomOf));
          const random = seededRandom(seed);
          const from = Int32Array.from(start);
          const found = annealSheets({ cuts, start: from, alternatives, goal, changes, random });
          const numbers = book.sheets.map(
            (_, pattern) => found.sheets.filter((sheet) => sheet === pattern).length,
          );
          expect(possible).toContainEqual(numbers);
          expect(found.room).toBeCloseTo(Math.min(goal, roomOf(numbers)), 6);
          expect(found.room >= goal - 1e-9).toBe(best >= goal);
          seen[best >= goal ? 'reached' : 'beyond']++;
          expect([...from]).toEqual(start);
        },
      ),
      { numRuns: 60 },
    );
    expect(seen.reached).toBeGreaterThan(10);
    expect(seen.beyond).toBeGreaterThan(10);
  });
});
