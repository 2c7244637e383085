import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Lot, lotsOf, offerLot, walkBack } from './lots.js';

describe('lotsOf', () => {
  it('makes up every number of copies that is of use and fits, and no more than are of use', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.nat(40), fc.nat(120), (size, most, room) => {
        const lots = lotsOf(3, size, most, room);
        const fits = Math.floor(room / size);
        if (lots.some(({ again }) => again)) {
          expect(lots).toEqual([{ item: 3, copies: 1, size, again: true }]);
          expect(most).toBeGreaterThanOrEqual(fits);
          return;
        }
        let reached = new Set([0]);
        for (const { item, copies, size: taken } of lots) {
          expect(item).toBe(3);
          expect(taken).toBe(copies * size);
          reached = new Set([...reached].flatMap((n) => [n, n + copies]));
        }
        const expected = fits === 0 ? 0 : most;
        expect([...reached].sort((a, b) => a - b)).toEqual(
          Array.from({ length: expected + 1 }, (_, n) => n),
        );
      }),
    );
  });

  it('needs few lots for many copies', () => {
    expect(lotsOf(0, 1, 1000, 100_000)).toHaveLength(10);
    expect(lotsOf(0, 1, 1_000_000, 200_000)).toHaveLength(1);
  });
});

const item = fc.record({
  size: fc.integer({ min: 1, max: 12 }),
  most: fc.nat(7),
  value: fc.nat(20),
});

/** The most that so many items are worth within a capacity, by plain recursion. */
function mostWorth(
  capacity: number,
  items: readonly { size: number; most: number; value: number }[],
): number {
  const [first, ...rest] = items;
  if (first === undefined) return 0;
  let best = 0;
  for (let n = 0; n <= first.most && n * first.size <= capacity; n++) {
    best = Math.max(best, n * first.value + mostWorth(capacity - n * first.size, rest));
  }
  return best;
}

function solved(
  capacity: number,
  items: readonly { size: number; most: number; value: number }[],
  exact: boolean,
) {
  const lots: readonly Lot[] = items.flatMap(({ size, most }, i) =>
    lotsOf(i, size, most, capacity),
  );
  const best = new Float64Array(capacity + 1).fill(exact ? Number.NEGATIVE_INFINITY : 0);
  best[0] = 0;
  const taken = new Uint8Array(lots.length * (capacity + 1));
  lots.forEach((lot, index) => {
    offerLot(best, taken, index * (capacity + 1), lot, items[lot.item].value * lot.copies);
  });
  return { lots, best, taken };
}

describe('the knapsack of lots', () => {
  it('finds what every filling tried finds, and walks back to one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.array(item, { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        (capacity, items, exact) => {
          const { lots, best, taken } = solved(capacity, items, exact);
          expect(Math.max(...best)).toBe(mostWorth(capacity, items));
          for (let room = 0; room <= capacity; room++) {
            if (best[room] === Number.NEGATIVE_INFINITY) continue;
            const counts = new Map<number, number>();
            const rest = walkBack(lots, taken, room, counts);
            const size = [...counts].reduce((sum, [i, n]) => sum + n * items[i].size, 0);
            const worth = [...counts].reduce((sum, [i, n]) => sum + n * items[i].value, 0);
            expect(worth).toBe(best[room]);
            expect(room - size).toBe(rest);
            if (exact) expect(rest).toBe(0);
            for (const [i, n] of counts) expect(n).toBeLessThanOrEqual(items[i].most);
          }
        },
      ),
    );
  });

  // Worked example: the classic unbounded knapsack of capacity 10 with weights
  // 6 3 4 2 and values 30 14 16 9 has value 48 (widely used textbook instance; from memory).
  it('solves a textbook instance', () => {
    const values = [30, 14, 16, 9];
    const items = [6, 3, 4, 2].map((size, i) => ({ size, most: 10, value: values[i] }));
    const { lots, best, taken } = solved(10, items, false);
    expect(best[10]).toBe(48);
    const counts = new Map<number, number>();
    walkBack(lots, taken, 10, counts);
    expect([...counts]).toEqual([
      [3, 2],
      [0, 1],
    ]);
  });
});
