import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listFillings } from './fillings.js';
import { type KnapsackItem, LayeredKnapsack } from './layered-knapsack.js';

const item = fc.record({ size: fc.integer({ min: 1, max: 12 }), most: fc.nat(5) });
const instance = fc.record({
  capacity: fc.integer({ min: 1, max: 30 }),
  items: fc.array(item, { minLength: 1, maxLength: 5 }),
  values: fc.array(fc.nat(20), { minLength: 5, maxLength: 5 }),
});

/** Every filling, by plain recursion. */
function allFillings(capacity: number, items: readonly KnapsackItem[]): number[][] {
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  const found: number[][] = [];
  for (let copies = 0; copies <= first.most && copies * first.size <= capacity; copies++) {
    for (const tail of allFillings(capacity - copies * first.size, rest)) {
      found.push([copies, ...tail]);
    }
  }
  return found;
}

const worthOf = (filling: readonly number[], values: readonly number[]) =>
  filling.reduce((sum, copies, i) => sum + copies * values[i], 0);

describe('LayeredKnapsack', () => {
  it('finds the best worth of every leading group of items', () => {
    fc.assert(
      fc.property(instance, ({ capacity, items, values }) => {
        const knapsack = new LayeredKnapsack(capacity, items);
        knapsack.solve(values.slice(0, items.length));
        for (let k = 1; k <= items.length; k++) {
          const best = Math.max(
            ...allFillings(capacity, items.slice(0, k)).map((filling) => worthOf(filling, values)),
          );
          expect(knapsack.worth(k)).toBe(best);
          const counts = knapsack.counts(k);
          const room = counts.reduce((sum, [i, copies]) => sum + copies * items[i].size, 0);
          expect(room).toBeLessThanOrEqual(capacity);
          expect(counts.every(([i, copies]) => i < k && copies <= items[i].most)).toBe(true);
          expect(counts.reduce((sum, [i, copies]) => sum + copies * values[i], 0)).toBe(best);
        }
      }),
    );
  });

  it('forgets the values of the last solve', () => {
    const knapsack = new LayeredKnapsack(10, [{ size: 3, most: 9 }]);
    knapsack.solve([5]);
    expect(knapsack.worth(1)).toBe(15);
    knapsack.solve([0]);
    expect(knapsack.worth(1)).toBe(0);
    expect(knapsack.counts(1)).toEqual([]);
  });

  // Worked example: the classic unbounded knapsack of capacity 10 with weights
  // 6 3 4 2 and values 30 14 16 9 has value 48 (widely used textbook instance; from memory).
  it('solves a textbook instance', () => {
    const knapsack = new LayeredKnapsack(
      10,
      [6, 3, 4, 2].map((size) => ({ size, most: 10 })),
    );
    knapsack.solve([30, 14, 16, 9]);
    expect(knapsack.worth(4)).toBe(48);
  });
});

describe('listFillings', () => {
  it('lists exactly the maximal fillings that are worth enough', () => {
    fc.assert(
      fc.property(
        instance,
        fc.nat(60),
        fc.nat(4),
        ({ capacity, items, values }, least, required) => {
          const budget = { fillings: 100_000, steps: 1_000_000 };
          const request = {
            capacity,
            items,
            values: values.slice(0, items.length),
            least,
            required,
          };
          const listed = listFillings(request, budget);
          const expected = allFillings(capacity, items).filter((filling) => {
            const room = capacity - filling.reduce((sum, n, i) => sum + n * items[i].size, 0);
            return (
              worthOf(filling, values) >= least &&
              items.every((entry, i) => entry.size > room || filling[i] === entry.most) &&
              (required >= items.length || filling.some((copies, i) => i >= required && copies > 0))
            );
          });
          const dense = (listed ?? []).map((filling) => {
            const counts = items.map(() => 0);
            for (const [i, copies] of filling) counts[i] = copies;
            return counts;
          });
          expect(dense.map(String).sort()).toEqual(expected.map(String).sort());
        },
      ),
    );
  });

  it('says so where its budget does not last', () => {
    const items = [2, 3, 5, 7].map((size) => ({ size, most: 50 }));
    const request = { capacity: 100, items, values: [2, 3, 5, 7], least: 0, required: 0 };
    expect(listFillings(request, { fillings: 10, steps: 1_000_000 })).toBeUndefined();
    expect(listFillings(request, { fillings: 1_000_000, steps: 10 })).toBeUndefined();
    expect(
      listFillings(request, { fillings: 1_000_000, steps: 1_000_000 })?.length,
    ).toBeGreaterThan(10);
  });
});
