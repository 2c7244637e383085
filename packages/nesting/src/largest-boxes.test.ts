import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCase } from './box-solver/random-box.test.support.js';
import { forAllBoxes, largestBoxes } from './largest-boxes.js';
import type { Box } from './pattern/box.js';
import { keptValue } from './pattern/kept-value.js';
import { TwoStagePricer } from './two-stage/two-stage-pricer.js';

const box = (length: number, width: number, pieces: number): Box => ({
  length,
  width,
  firstCuts: ['along'],
  lays: Array.from({ length: pieces }, (_, piece) => ({
    piece,
    turned: false,
    length: 5 + piece,
    width: 3,
  })),
});

describe('largestBoxes', () => {
  const boxes = [box(20, 10, 2), box(50, 40, 3), box(30, 10, 2), box(60, 40, 3)];

  it('are all where they are few', () => {
    expect(largestBoxes(boxes, 10)).toBe(boxes);
    expect(largestBoxes([box(20_000, 10_000, 99_999)])).toHaveLength(1);
  });

  it('are as they were, and the others have nothing to lie on them', () => {
    expect(largestBoxes(boxes, 9).map(({ lays }) => lays.length)).toEqual([0, 3, 2, 3]);
    expect(largestBoxes(boxes, 7).map(({ lays }) => lays.length)).toEqual([0, 3, 0, 3]);
    expect(largestBoxes(boxes, 5).map(({ length }) => length)).toEqual([20, 50, 30, 60]);
  });
});

describe('a pricer of the largest boxes', () => {
  it('has a worth that no pattern of any box exceeds, and patterns of the largest', () => {
    let beyond = 0;
    fc.assert(
      fc.property(
        boxCase({ narrowest: true, keep: true }),
        fc.array(fc.tuple(fc.integer({ min: -4, max: 9 }), fc.integer({ min: -4, max: 9 })), {
          minLength: 2,
          maxLength: 5,
        }),
        fc.integer({ min: 1, max: 20 }),
        fc.boolean(),
        ({ box, limits, values, coin, rule }, growth, mostLays, worthless) => {
          const boxes = growth.map(([longer, wider]) => {
            const length = Math.max(limits.kerf + 1, box.length + longer);
            const width = Math.max(limits.kerf + 1, box.width + wider);
            const lays = box.lays.filter((lay) => lay.length <= length && lay.width <= width);
            return { ...box, length, width, lays };
          });
          const own = worthless ? undefined : rule;
          const keep = (length: number, width: number) => keptValue(length, width, own);
          const demand = values.map(() => 1000);
          const price = (some: readonly Box[]) => {
            const tried = own === undefined ? 'needed' : 'every';
            return new TwoStagePricer(some, demand, limits, own && keep, tried);
          };
          const priced = largestBoxes(boxes, mostLays);
          const all = forAllBoxes(price(priced), boxes, priced, own).price(values, coin);
          const exact = price(boxes).price(values, coin);
          boxes.forEach((entry, b) => {
            expect(all.worth[b]).toBeGreaterThanOrEqual(exact.worth[b]);
            if (priced[b] === entry) {
              expect(all.worth[b]).toBe(exact.worth[b]);
              expect(all.patterns(b)).toEqual(exact.patterns(b));
              return;
            }
            beyond++;
            expect(all.patterns(b)).toEqual([]);
          });
        },
      ),
      { numRuns: 500 },
    );
    expect(beyond).toBeGreaterThan(200);
  });

  it('lists nothing, since it would not be all', () => {
    const boxes = [box(20, 10, 2), box(50, 40, 3)];
    const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
    const whole = new TwoStagePricer(boxes, [9, 9, 9], limits, undefined);
    expect(forAllBoxes(whole, boxes, boxes, undefined)).toBe(whole);
    const priced = largestBoxes(boxes, 3);
    const some = forAllBoxes(whole, boxes, priced, undefined);
    expect(some.within).toBeUndefined();
    expect(some.bandsOf).toBeUndefined();
    expect(some.atMost).toBeUndefined();
  });

  it('minds the area where a closer worth is asked for', () => {
    const boxes = [box(20, 10, 2), box(50, 40, 3)];
    const rule = { leastLength: 1, leastWidth: 1, coinsPerMillion: 500_000 };
    const closer = {
      price: () => ({ worth: [0, 0], patterns: () => [] }),
      atMost: (values: ArrayLike<number>) => (values.length === 0 ? undefined : [0, 7]),
    };
    const some = forAllBoxes(closer, boxes, largestBoxes(boxes, 3), rule);
    // By area: 200 square ticks at 30 for 15, or at half a coin of 3.
    expect(some.atMost?.([30, 10, 10], 3)).toEqual([401, 7]);
    expect(some.atMost?.([0, 0, 0], 3)).toEqual([300, 7]);
    expect(some.atMost?.([], 3)).toBeUndefined();
  });
});
