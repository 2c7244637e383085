import { describe, expect, it } from 'vitest';
import { kindPricers } from './kind-pricers.js';
import type { Box } from './pattern/box.js';

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
});
