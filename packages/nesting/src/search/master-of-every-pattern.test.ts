import { describe, expect, it } from 'vitest';
import { leastMetal } from '../master/objective.js';
import { either, piece, planned, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem } from '../problem.js';
import { groundOf } from './ground.test.support.js';
import { Incumbent } from './incumbent.js';
import { masterOfEveryPattern } from './master-of-every-pattern.js';

/** One sheet can leave 10 x 3 and 6 x 3 beside one piece, 6 x 6 beside two, 6 x 3 beside three. */
const problem: CuttingProblem = {
  pieces: [piece('a', 4, 3, 3)],
  stock: [sheet('s', 10, 6, { price: 70, canBuy: 2 })],
  shear: either,
  keep: [{ leastLength: 6, leastWidth: 3, coinsPerMillion: 1_000_000 }],
};

describe('masterOfEveryPattern', () => {
  it('finds the least cost and proves it', async () => {
    const { ground } = groundOf(problem);
    const incumbent = new Incumbent(ground, {});
    expect(await masterOfEveryPattern(ground, incumbent)).toBe(true);
    // One sheet: 70 - 18. Two: 140 - 36 - 48.
    expect(incumbent.cost).toBe(52);
    expect(incumbent.met).toBe(true);
    expect(incumbent.bound).toBe(52);
    expect(ground.effort.integerMasters).toBe(1);
  });

  it('proves that there is not enough', async () => {
    const { ground } = groundOf({ ...problem, pieces: [piece('a', 4, 3, 9)] });
    const incumbent = new Incumbent(ground, {});
    expect(await masterOfEveryPattern(ground, incumbent)).toBe(true);
    expect(incumbent.bound).toBe(Number.POSITIVE_INFINITY);
  });

  it('leaves other objectives and large problems alone', async () => {
    const capped = groundOf(problem, leastMetal(500)).ground;
    expect(await masterOfEveryPattern(capped, new Incumbent(capped, {}))).toBe(false);
    const { ground } = groundOf({ ...problem, stock: [sheet('s', 1000, 600)] });
    const incumbent = new Incumbent(ground, {});
    expect(await masterOfEveryPattern(ground, incumbent)).toBe(false);
    expect(incumbent.met).toBe(false);
  });

  it('lets a plan use what is on hand of a size first, and another size bought in its place', async () => {
    const own = sheet('own', 10, 6, { price: 30, onHand: 1, bookValue: 90 });
    const other = sheet('other', 10, 6, { price: 60 });
    const plan = await planned({ ...problem, stock: [own, other], keep: [] });
    expect([plan.cost, plan.bound]).toEqual([60, { cost: 60, proven: true }]);
    // Three sheets: 90 + 30 + 30; 60 each from the other dealer.
    const more = await planned({
      ...problem,
      pieces: [piece('a', 4, 3, 12)],
      stock: [own, other],
      keep: [],
    });
    expect([more.cost, more.bound]).toEqual([150, { cost: 150, proven: true }]);
  });
});
