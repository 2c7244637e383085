import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingPlan, PlanOutcome } from './plan.js';
import { planCutting } from './plan-cutting.js';
import type { CuttingProblem, Piece, Stock } from './problem.js';
import { ProblemError } from './problem-error.js';
import { randomProblem } from './random-problem.test.support.js';
import { stockClasses } from './stock-classes.js';
import { firstFit } from './two-stage/first-fit.js';
import { leastMoney } from './two-stage/objective.js';
import { stripFamilies } from './two-stage/strip-families.js';
import { verifyPlan } from './verify/verify-plan.js';

function planned(outcome: PlanOutcome): CuttingPlan {
  if (outcome.status !== 'planned') throw new Error(`expected a plan, got '${outcome.status}'`);
  return outcome.plan;
}

/** One-dimensional stock cutting is the case where every piece is as wide as the stock. */
function barProblem(
  length: number,
  pieces: readonly (readonly [number, number])[],
): CuttingProblem {
  return {
    pieces: pieces.map(([size, quantity]) => ({
      id: `${size}`,
      length: size,
      width: 1,
      quantity,
      mayTurn: false,
    })),
    stock: [{ kind: 'sheet', id: 'bar', length, width: 1, price: 1, onHand: 0, canBuy: 'any' }],
    shear: { firstCut: 'along' },
  };
}

const sheet = (id: string, length: number, width: number, more: Partial<Stock> = {}): Stock =>
  ({ kind: 'sheet', id, length, width, price: 100, onHand: 0, canBuy: 'any', ...more }) as Stock;

const piece = (id: string, length: number, width: number, quantity: number): Piece => ({
  id,
  length,
  width,
  quantity,
  mayTurn: true,
});

const either = { firstCut: 'either' } as const;

describe('planCutting against published examples', () => {
  it.each<[string, number, readonly (readonly [number, number])[], number]>([
    // Encyclopedic worked example of the one-dimensional cutting stock problem
    // (linear bound 72.917).
    [
      'the paper rolls of 5600',
      5600,
      [
        [1380, 22],
        [1520, 25],
        [1560, 12],
        [1710, 14],
        [1820, 18],
        [1880, 18],
        [1930, 20],
        [2000, 10],
        [2050, 12],
        [2100, 14],
        [2140, 16],
        [2150, 18],
        [2200, 20],
      ],
      73,
    ],
    // V. Chvatal, Linear Programming, 1983, p. 195 (data published; 453 recomputed).
    [
      'the rolls of 100 inches',
      100,
      [
        [45, 97],
        [36, 610],
        [31, 395],
        [14, 211],
      ],
      453,
    ],
    // W. Winston, Operations Research, chapter on column generation (data published; 19 recomputed).
    [
      'the boards of 17 feet',
      17,
      [
        [3, 25],
        [5, 20],
        [9, 15],
      ],
      19,
    ],
    // Fourer, Gay, Kernighan, the AMPL book, cutting-stock example (from memory; 47 recomputed).
    [
      'the rolls of 110',
      110,
      [
        [20, 48],
        [45, 35],
        [50, 24],
        [55, 10],
        [75, 8],
      ],
      47,
    ],
    // Textbook exercises (data published; optima recomputed by exact integer programming).
    [
      'a cut without waste',
      100,
      [
        [20, 100],
        [30, 120],
        [40, 40],
        [50, 20],
      ],
      82,
    ],
    [
      'the lumber yard',
      25,
      [
        [7, 5000],
        [9, 1200],
        [11, 300],
      ],
      2167,
    ],
    [
      'the paper mill',
      100,
      [
        [60, 30],
        [48, 50],
        [36, 25],
        [24, 90],
      ],
      77,
    ],
    [
      'the smallest sample',
      10,
      [
        [7, 2],
        [5, 2],
        [3, 4],
      ],
      4,
    ],
  ])('%s', async (_, length, pieces, sheets) => {
    const plan = planned(await planCutting(barProblem(length, pieces)));
    expect(plan.cost).toBe(sheets);
    expect(plan.bound).toEqual({ cost: sheets, proven: true });
  });
});

describe('planCutting', () => {
  it('makes verified plans, never below the bound and never above first fit', async () => {
    let plans = 0;
    await fc.assert(
      fc.asyncProperty(
        randomProblem({ pieceTypes: 8, quantity: 30, sheetSizes: 2, offcuts: 4, side: 60 }),
        async (problem) => {
          const outcome = await planCutting(problem, { timeLimitSeconds: 2 });
          if (outcome.status !== 'planned') return;
          plans++;
          const { plan } = outcome;
          expect(verifyPlan(problem, plan)).toEqual([]);
          expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
          const classes = stockClasses(problem);
          const faces = stripFamilies(problem, classes);
          const demand = problem.pieces.map(({ quantity }) => quantity);
          const rule = firstFit(faces, classes, demand, leastMoney).plan;
          expect(plan.cost).toBeLessThanOrEqual(rule?.cost ?? Number.POSITIVE_INFINITY);
        },
      ),
      { numRuns: 60 },
    );
    expect(plans).toBeGreaterThan(20);
  });

  it('gives the same plan for the same problem', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 37, 5, 31), piece('b', 29, 4, 44), piece('c', 18, 7, 25)],
      stock: [sheet('s', 90, 60, { price: 7 }), sheet('t', 60, 45, { price: 4 })],
      shear: either,
    };
    expect(await planCutting(problem)).toEqual(await planCutting(problem));
  });

  it('uses offcuts, then sheets on hand, before it buys', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 50, 10, 12)],
      stock: [
        sheet('s', 100, 20, { onHand: 1 }),
        { kind: 'offcut', id: 'A', length: 50, width: 30 },
        { kind: 'offcut', id: 'B', length: 50, width: 30 },
      ],
      shear: either,
    };
    const plan = planned(await planCutting(problem));
    // 3 from each offcut, 4 from the sheet on hand, 2 from a bought one.
    expect(plan.buy).toEqual([{ stock: 's', count: 1, cost: 100 }]);
    expect(plan.bound.proven).toBe(true);
    expect(plan.layouts.map((layout) => layout.stock).sort()).toEqual(['A', 'B', 's', 's']);
  });

  it('leaves whole sheets on hand alone where an offcut will do', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 40, 10, 2)],
      stock: [
        sheet('s', 100, 20, { onHand: 5 }),
        { kind: 'offcut', id: 'A', length: 45, width: 25 },
      ],
      shear: either,
    };
    const plan = planned(await planCutting(problem));
    expect(plan.layouts.map((layout) => layout.stock)).toEqual(['A']);
    expect(plan.cost).toBe(0);
  });

  it('takes no more sheets on hand than it needs, although they cost nothing', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 30, 11, 20), piece('b', 23, 9, 18)],
      stock: [sheet('s', 100, 60, { onHand: 50 })],
      shear: either,
    };
    const plan = planned(await planCutting(problem));
    const used = plan.layouts.reduce((sum, layout) => sum + layout.count, 0);
    // 20 x 330 + 18 x 207 = 10326 square ticks: more than one sheet of 6000 holds.
    expect(used).toBe(2);
  });

  it('mixes sheet sizes where that is cheaper', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 100, 10, 12)],
      stock: [sheet('large', 100, 100, { price: 90 }), sheet('small', 100, 20, { price: 20 })],
      shear: either,
    };
    const plan = planned(await planCutting(problem));
    expect(plan.cost).toBe(110);
    expect(plan.buy).toEqual([
      { stock: 'large', count: 1, cost: 90 },
      { stock: 'small', count: 1, cost: 20 },
    ]);
  });

  it('keeps to the direction and the reach of the shear', async () => {
    const base: CuttingProblem = {
      pieces: [{ ...piece('a', 40, 10, 6), mayTurn: false }],
      stock: [sheet('s', 80, 45)],
      shear: either,
    };
    for (const firstCut of ['along', 'across'] as const) {
      const problem = { ...base, shear: { firstCut } };
      expect(verifyPlan(problem, planned(await planCutting(problem)))).toEqual([]);
    }
    const short = { ...base, shear: { ...either, longestCut: 45 } };
    const plan = planned(await planCutting(short));
    const spans = plan.layouts.flatMap(({ cuts }) =>
      cuts.map((cut) => cut.x2 - cut.x1 + cut.y2 - cut.y1),
    );
    expect(Math.max(...spans)).toBeLessThanOrEqual(45);
  });

  it('says which pieces fit no stock, and which only the shear keeps out', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('fits', 10, 10, 1), piece('huge', 90, 70, 1), piece('long', 55, 30, 1)],
      stock: [sheet('small', 50, 40), sheet('large', 80, 60)],
      shear: { ...either, longestCut: 50 },
    };
    expect(await planCutting(problem)).toEqual({
      status: 'piece too large',
      pieces: ['huge', 'long'],
      largestStock: 'large',
      forTheShear: ['long'],
    });
  });

  it('proves that the stock is not enough', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 50, 10, 5)],
      stock: [sheet('s', 100, 20, { canBuy: 1 })],
      shear: either,
    };
    expect(await planCutting(problem)).toEqual({ status: 'not enough stock' });
    const without = sheet('s', 100, 20, { canBuy: 0 });
    expect((await planCutting({ ...problem, stock: [without] })).status).not.toBe('planned');
  });

  it('returns a verified plan with an honest bound when it has no time', async () => {
    const pieces = Array.from({ length: 30 }, (_, i) => piece(`${i}`, 30 + i * 7, 20 + i * 3, 9));
    const problem: CuttingProblem = { pieces, stock: [sheet('s', 600, 300)], shear: either };
    let clock = 0;
    const now = () => (clock += 1000);
    const plan = planned(await planCutting(problem, { timeLimitSeconds: 1, now }));
    expect(plan.effort.ending).toBe('time limit');
    expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
    expect(plan.bound.proven).toBe(plan.bound.cost === plan.cost);
  });

  it.each<[string, (problem: CuttingProblem) => CuttingProblem, string]>([
    ['no pieces', (p) => ({ ...p, pieces: [] }), 'pieces: is empty'],
    ['no stock', (p) => ({ ...p, stock: [] }), 'stock: is empty'],
    ['a negative size', (p) => ({ ...p, pieces: [piece('a', -1, 5, 1)] }), 'pieces[0].length'],
    ['NaN', (p) => ({ ...p, pieces: [piece('a', 5, Number.NaN, 1)] }), 'pieces[0].width'],
    ['a quantity of 1.5', (p) => ({ ...p, pieces: [piece('a', 5, 5, 1.5)] }), 'got 1.5'],
    ['a size beyond the grid', (p) => ({ ...p, stock: [sheet('s', 1e9, 5)] }), 'at most'],
    [
      'a quantity beyond 1e6',
      (p) => ({ ...p, pieces: [piece('a', 5, 5, 2e6)] }),
      'at most 1000000',
    ],
    [
      'an id used twice',
      (p) => ({ ...p, pieces: [...p.pieces, ...p.pieces] }),
      'every id must be its own',
    ],
    [
      'a price in fractions',
      (p) => ({ ...p, stock: [sheet('s', 9, 9, { price: 0.5 })] }),
      'stock[0].price',
    ],
    [
      'a shear without reach',
      (p) => ({ ...p, shear: { ...either, longestCut: 0 } }),
      'shear.longestCut',
    ],
  ])('refuses %s', async (_, change, message) => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 5, 5, 1)],
      stock: [sheet('s', 10, 10)],
      shear: either,
    };
    const failure = await planCutting(change(problem)).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(ProblemError);
    expect((failure as ProblemError).message).toContain(message);
  });
});
