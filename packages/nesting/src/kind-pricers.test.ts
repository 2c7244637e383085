import { describe, expect, it } from 'vitest';
import { kindPricers } from './kind-pricers.js';
import type { Box } from './pattern/box.js';
import { keptValue } from './pattern/kept-value.js';

const KINDS = 60;

/** A small box on which many kinds of pieces may lie. */
function box(length: number): Box {
  return {
    length,
    width: 8,
    firstCuts: ['along'],
    lays: Array.from({ length: KINDS }, (_, piece) => ({
      piece,
      turned: false,
      length: 3 + (piece % 5),
      width: 2 + (piece % 3),
    })),
  };
}

describe('kindPricers', () => {
  const pricersOf = (count: number) =>
    kindPricers(2, {
      boxes: Array.from({ length: count }, (_, i) => box(10 + (i % 40))),
      demand: Array.from({ length: KINDS }, () => 1),
      limits: { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 2 },
      rule: undefined,
      keep: undefined,
      over: () => false,
    });

  it('lists strips for a few boxes, and none where not all of them are priced', () => {
    expect(pricersOf(3).strips()).toBeDefined();
    // 120,000 ways to lie on boxes: what could be listed would leave out the smallest.
    expect(pricersOf(2000).strips()).toBeUndefined();
  });

  it('tells pricers in turn, the exact one last, and a rough one where remnants have a value', () => {
    const rule = { leastLength: 4, leastWidth: 2, coinsPerMillion: 300_000 };
    for (const stages of [2, 3, 'free'] as const) {
      for (const keeps of [undefined, rule]) {
        const { exact, inTurn, rough } = kindPricers(stages, {
          boxes: [box(12)],
          demand: Array.from({ length: KINDS }, () => 1),
          limits: { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 },
          rule: keeps,
          keep: keeps && ((length, width) => keptValue(length, width, keeps)),
          over: () => false,
        });
        expect(inTurn.at(-1)).toBe(exact);
        expect(rough === undefined).toBe(stages === 2 || keeps === undefined);
        const values = Array.from({ length: KINDS }, (_, piece) => 2 + (piece % 3));
        const worths = inTurn.map((pricer) => pricer.price(values, 1).worth[0]);
        // None of them finds more than the exact one, and that no more than the rough one.
        expect(Math.max(...worths)).toBe(worths.at(-1));
        expect(rough?.pricer.price(values, 1).worth[0] ?? worths.at(-1)).toBeGreaterThanOrEqual(
          worths.at(-1) ?? Number.NaN,
        );
      }
    }
  });

  it('bounds boxes by their area that are too many to price, roughly too', () => {
    const rule = { leastLength: 4, leastWidth: 2, coinsPerMillion: 300_000 };
    const { rough } = kindPricers(3, {
      boxes: Array.from({ length: 2000 }, (_, i) => box(10 + (i % 40))),
      demand: Array.from({ length: KINDS }, () => 1),
      limits: { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 },
      rule,
      keep: (length, width) => keptValue(length, width, rule),
      over: () => false,
    });
    // A piece of 3 by 2, worth twelve, makes boxes worth more than the metal that is kept.
    const values = Array.from({ length: KINDS }, (_, piece) => (piece === 0 ? 12 : 0));
    const { worth, patterns } = rough?.pricer.price(values, 1) ?? { worth: [], patterns: () => [] };
    expect(worth.length).toBe(2000);
    worth.forEach((own, index) => {
      const area = (10 + (index % 40)) * 8;
      expect(own).toBeGreaterThan(1.5 * area);
    });
    const empty = worth.filter((_, index) => patterns(index).length === 0).length;
    expect(empty).toBeGreaterThan(500);
    expect(empty).toBeLessThan(1500);
  });
});
