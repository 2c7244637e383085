import { describe, expect, it } from 'vitest';
import { cuttingRules } from '../pattern/cutting-rules.js';
import { keptValue } from '../pattern/kept-value.js';
import { either, piece, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem } from '../problem.js';
import { standardEngines } from '../solvers/engine-choice.js';
import { StripLists } from '../two-stage/strip-lists.js';
import { money } from './objective.js';
import { SheetBySheetMaster } from './sheet-by-sheet-master.js';
import { stockClasses } from './stock-class.js';

/** One sheet can leave 10 x 3 and 6 x 3 beside one piece, 6 x 6 beside two, 6 x 3 beside three. */
const problem: CuttingProblem = {
  pieces: [piece('a', 4, 3, 3)],
  stock: [sheet('s', 10, 6, { price: 70, canBuy: 2 })],
  shear: either,
  keep: [{ leastLength: 6, leastWidth: 3, coinsPerMillion: 1_000_000 }],
};

/** The master of all strips there are, for so many sheets. */
function masterOf({ pieces, stock, shear, keep }: CuttingProblem, sheets: number, atMost: number) {
  const { limits } = cuttingRules({ pieces, stock, shear });
  const [rule] = keep ?? [];
  const value = (length: number, width: number) => keptValue(length, width, rule);
  const classes = stockClasses({ pieces, stock, shear }, limits, value);
  const demand = pieces.map(({ quantity }) => quantity);
  const boxes = classes.map(({ box }) => box);
  const lists = new StripLists(boxes, demand, limits, value);
  const priced = lists.price(
    pieces.map(() => 0),
    1,
  );
  const faces = priced.within(priced.worth, 1e9, 1e5) ?? [];
  const { kerf, narrowest } = limits;
  const request = { classes, demand, measure: money, faces, atMost, sheets: [sheets], kerf };
  return new SheetBySheetMaster({
    ...request,
    slivers: narrowest > 1,
    engines: standardEngines,
  });
}

describe('SheetBySheetMaster', () => {
  it('finds the strips of each sheet that cost least, to the coin', async () => {
    // One sheet: 70 - 18. Two: 140 - 36 - 48.
    const one = await masterOf(problem, 1, 100).solve(10, 1000);
    expect([one.status, one.cost]).toEqual(['optimal', 52]);
    expect(one.sheets).toHaveLength(1);
    const copies = one.sheets?.[0].strips.flatMap(({ counts }) => counts.map(([, count]) => count));
    expect(copies?.reduce((sum, count) => sum + count, 0)).toBe(3);
    const two = await masterOf(problem, 2, 100).solve(10, 1000);
    expect(two.cost).toBe(52);
  });

  it('says that no plan costs so little, or that the sheets do not hold the pieces', async () => {
    expect((await masterOf(problem, 2, 51).solve(10, 1000)).status).toBe('infeasible');
    const more = { ...problem, pieces: [piece('a', 4, 3, 5)] };
    expect((await masterOf(more, 1, 1000).solve(10, 1000)).status).toBe('infeasible');
    // Three leave 18 of a sheet, two 36; four would leave nothing, and one 48.
    expect((await masterOf(more, 2, 1000).solve(10, 1000)).cost).toBe(140 - 54);
  });

  it('leaves no rest that the shear cannot hold, unless a strip takes it up', async () => {
    const bars = (width: number): CuttingProblem => ({
      pieces: [piece('a', 10, 3, 1)],
      stock: [sheet('s', 10, width, { price: 70 })],
      shear: { firstCut: 'along', narrowestStrip: 2 },
    });
    expect((await masterOf(bars(3), 1, 100).solve(10, 1000)).cost).toBe(70);
    expect((await masterOf(bars(4), 1, 100).solve(10, 1000)).status).toBe('infeasible');
    expect((await masterOf(bars(5), 1, 100).solve(10, 1000)).cost).toBe(70);
  });
});
