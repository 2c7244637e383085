import { describe, expect, it } from 'vitest';
import type { Remnant } from './plan.js';
import type { CuttingProblem } from './problem.js';
import { purchases } from './purchases.js';

const problem: CuttingProblem = {
  pieces: [{ id: 'lid', length: 10, width: 10, quantity: 1, mayTurn: false }],
  stock: [
    {
      kind: 'sheet',
      id: 'ten',
      length: 1000,
      width: 500,
      price: 700,
      onHand: 2,
      canBuy: 'any',
      packSize: 10,
      metal: 'tin',
      bookValue: 650,
    },
    {
      kind: 'sheet',
      id: 'single',
      length: 800,
      width: 500,
      price: 500,
      onHand: 3,
      canBuy: 5,
      metal: 'tin',
    },
    { kind: 'offcut', id: 'A', length: 400, width: 300, metal: 'tin' },
    { kind: 'offcut', id: 'B', length: 400, width: 300, metal: 'copper' },
  ],
  shear: { firstCut: 'either' },
  keep: [{ metal: 'tin', leastLength: 300, leastWidth: 100, coinsPerMillion: 1000, trouble: 50 }],
};
const remnant = (value: number): Remnant => ({
  x: 0,
  y: 0,
  length: 1,
  width: 1,
  keep: value > 0,
  value,
});

describe('purchases', () => {
  it('buys whole packs after what is on hand, and racks the sheets left over', () => {
    const reckoned = purchases(
      [
        { stock: 'ten', count: 4, remnants: [remnant(30), remnant(5)] },
        { stock: 'ten', count: 1, remnants: [] },
        { stock: 'single', count: 2, remnants: [] },
        { stock: 'A', count: 1, remnants: [remnant(7)] },
        { stock: 'B', count: 1, remnants: [] },
      ],
      problem,
    );
    // Five of the tens: two on hand at 650, a pack of ten bought, seven left at 500 - 50 each.
    // Two singles on hand at the rule's 400 - 50; A at 120 - 50; no rule for copper.
    expect(reckoned).toEqual({
      buy: [{ stock: 'ten', count: 10, cost: 7000 }],
      parts: { bought: 7000, fromShop: 1300 + 700 + 70, kept: 4 * 35 + 7 + 7 * 450 },
      cost: 7000 + 2070 - (140 + 7 + 3150),
    });
  });

  it('buys nothing where nothing is used', () => {
    expect(purchases([], problem)).toEqual({
      buy: [],
      parts: { bought: 0, fromShop: 0, kept: 0 },
      cost: 0,
    });
  });
});
