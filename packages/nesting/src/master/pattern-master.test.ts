import { describe, expect, it } from 'vitest';
import type { Pattern } from '../pattern/part.js';
import { either, offcut, piece, sheet } from '../plan-cutting.test.support.js';
import type { Stock } from '../problem.js';
import { standardEngines } from '../solvers/engine-choice.js';
import { money } from './objective.js';
import { solvePatternMaster } from './pattern-master.js';
import { stockClasses } from './stock-class.js';

const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
const pattern = (stockClass: number, copies: number, kept: number): Pattern => ({
  stockClass,
  part: { kind: 'split', cuts: 'along', parts: [] },
  counts: [[0, copies]],
  kept,
});

/** One piece, so many times. */
function solved(
  quantity: number,
  stock: readonly Stock[],
  patterns: readonly Pattern[],
  whole: number,
) {
  const problem = { pieces: [piece('a', 1, 1, quantity)], stock, shear: either };
  const classes = stockClasses(problem, limits, () => whole);
  const demand = [quantity];
  return solvePatternMaster(
    { classes, demand, measure: money, patterns, engines: standardEngines },
    10,
  );
}

describe('solvePatternMaster', () => {
  it('takes off what remnants are worth, coin for coin', async () => {
    // Two of three leave nothing; three of two leave 40 each.
    const patterns = [pattern(0, 3, 0), pattern(0, 2, 40)];
    const of = (price: number) => solved(6, [sheet('s', 9, 9, { price })], patterns, 0);
    expect(await of(130)).toEqual({ status: 'optimal', cost: 260, counts: [2, 0] });
    expect(await of(110)).toMatchObject({ cost: 210, counts: [0, 3] });
  });

  it('pays for whole packs, and values what is left over of them', async () => {
    const pack = sheet('p', 9, 9, { price: 100, packSize: 4 });
    const single = sheet('s', 8, 8, { price: 130 });
    const patterns = [pattern(0, 1, 0), pattern(1, 1, 0)];
    // Three from a pack: 400 - 80; by the sheet: 390.
    expect(await solved(3, [pack, single], patterns, 80)).toMatchObject({
      cost: 320,
      counts: [3, 0],
    });
    // Five: a pack and a single sheet.
    expect(await solved(5, [pack, single], patterns, 80)).toMatchObject({
      cost: 530,
      counts: [4, 1],
    });
    // Two: 400 - 2 x 80 or 260.
    expect(await solved(2, [pack, single], patterns, 80)).toMatchObject({ cost: 240 });
    expect(await solved(2, [pack, single], patterns, 60)).toMatchObject({ cost: 260 });
  });

  it('uses what is on hand of a size before it buys more of that size', async () => {
    const own = sheet('s', 9, 9, { price: 50, onHand: 2, bookValue: 90 });
    expect(await solved(3, [own], [pattern(0, 1, 0)], 0)).toMatchObject({ cost: 230 });
  });

  it('knows when there is not enough', async () => {
    const patterns = [pattern(0, 2, 0)];
    expect(await solved(2, [offcut('A', 9, 9)], patterns, 7)).toMatchObject({
      cost: 7,
      counts: [1],
    });
    expect(await solved(3, [offcut('A', 9, 9)], patterns, 7)).toBe('infeasible');
    expect(await solved(3, [offcut('A', 9, 9)], [], 7)).toBe('infeasible');
  });

  it('leaves orders of many sheets alone', async () => {
    expect(await solved(5_000, [sheet('s', 9, 9)], [pattern(0, 1, 0)], 0)).toBe('stopped');
  });
});
