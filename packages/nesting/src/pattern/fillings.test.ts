import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type KnapsackItem, listFillings } from './fillings.js';

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

  it('takes what it lists off the budget, which others share', () => {
    const budget = { fillings: 3, steps: 1000 };
    const request = {
      capacity: 5,
      items: [{ size: 2, most: 9 }],
      values: [1],
      least: 0,
      required: 0,
    };
    for (let left = 2; left >= 0; left--) {
      expect(listFillings(request, budget)).toEqual([[[0, 2]]]);
      expect(budget.fillings).toBe(left);
    }
    expect(listFillings(request, budget)).toBeUndefined();
  });
});
