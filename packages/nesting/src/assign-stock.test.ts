import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignStock } from './assign-stock.js';
import { either, offcut, piece, sheet, stockUsed } from './plan-cutting.test.support.js';
import type { CuttingProblem } from './problem.js';
import { LARGE, randomOfKind } from './random-kinds.test.support.js';
import { groundOf } from './search/ground.test.support.js';

describe('assignStock', () => {
  it('takes supplies in their order: the shop first, the cheapest first', () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 50, 20, 12)],
      stock: [
        sheet('dear', 100, 20, { price: 90, onHand: 1 }),
        sheet('cheap', 100, 20, { price: 70, canBuy: 2 }),
        offcut('A', 100, 20),
      ],
      shear: either,
    };
    const { ground, start = [] } = groundOf(problem);
    expect(stockUsed(assignStock(start, problem, ground.classes))).toEqual({
      A: 1,
      // One on hand, and two more once the two cheap ones are gone.
      dear: 3,
      cheap: 2,
    });
  });

  it('cuts on offcuts what is cut least often, so that few layouts are parted', () => {
    const problem: CuttingProblem = {
      pieces: [piece('often', 50, 20, 10), piece('once', 100, 20, 1)],
      stock: [offcut('A', 100, 20), sheet('s', 100, 20)],
      shear: either,
    };
    const { ground, start = [] } = groundOf(problem);
    const layouts = assignStock(start, problem, ground.classes);
    expect(layouts.map(({ stock, count }) => [stock, count])).toEqual([
      ['A', 1],
      ['s', 5],
    ]);
    expect(layouts[0].pieces.map((placed) => placed.piece)).toEqual(['once']);
  });

  it('cuts every sheet once, and never more of a stock than there are', () => {
    const features = { limitedStock: true, offcuts: true, packs: true, bookValues: true };
    let found = 0;
    fc.assert(
      fc.property(randomOfKind(features, LARGE), (problem) => {
        const { ground, start } = groundOf(problem);
        if (start === undefined) return;
        found++;
        const layouts = assignStock(start, problem, ground.classes);
        const used = stockUsed(layouts);
        const sheets = start.reduce((sum, { count }) => sum + count, 0);
        expect(Object.values(used).reduce((sum, count) => sum + count, 0)).toBe(sheets);
        for (const stock of problem.stock) {
          const most =
            stock.kind === 'offcut'
              ? 1
              : stock.canBuy === 'any'
                ? Number.POSITIVE_INFINITY
                : stock.onHand + stock.canBuy;
          expect(used[stock.id] ?? 0).toBeLessThanOrEqual(most);
        }
        const made = problem.pieces.map(({ id }) =>
          layouts.reduce(
            (sum, { count, pieces }) => sum + count * pieces.filter((p) => p.piece === id).length,
            0,
          ),
        );
        const planned = problem.pieces.map((_, i) =>
          start.reduce(
            (sum, { pattern, count }) => sum + count * (new Map(pattern.counts).get(i) ?? 0),
            0,
          ),
        );
        expect(made).toEqual(planned);
      }),
      { numRuns: 200 },
    );
    expect(found).toBeGreaterThan(50);
  });
});
