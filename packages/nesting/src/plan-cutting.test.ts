import { describe, expect, it } from 'vitest';
import { planCutting } from './plan-cutting.js';
import { either, offcut, piece, planned, sheet } from './plan-cutting.test.support.js';
import type { CuttingProblem } from './problem.js';
import { ProblemError } from './problem-error.js';

const tin = { metal: 'tinplate', thickness: 0.3 } as const;
const copper = { metal: 'copper', thickness: 0.5 } as const;

describe('what comes of planCutting', () => {
  it('is a plan with its cost, its bound and what to buy', async () => {
    const plan = await planned({
      pieces: [piece('a', 50, 10, 8)],
      stock: [sheet('s', 100, 20)],
      shear: either,
    });
    expect(plan.cost).toBe(200);
    expect(plan.parts).toEqual({ bought: 200, fromShop: 0, kept: 0 });
    expect(plan.buy).toEqual([{ stock: 's', count: 2, cost: 200 }]);
    expect(plan.bound).toEqual({ cost: 200, proven: true });
    expect(plan.effort.ending).toBe('bound met');
    expect(plan.spares).toEqual([]);
    expect(plan.layouts).toHaveLength(1);
    expect(plan.layouts[0].count).toBe(2);
  });

  it('is no stock of the metal, for all pieces of every such metal', async () => {
    const problem: CuttingProblem = {
      pieces: [
        piece('tin', 10, 10, 1, tin),
        piece('copper', 10, 10, 1, copper),
        piece('thick', 10, 10, 2, { ...tin, thickness: 0.4 }),
        piece('copper too', 5, 5, 1, copper),
      ],
      stock: [sheet('s', 100, 20, tin)],
      shear: either,
    };
    expect(await planCutting(problem)).toEqual({
      status: 'no stock of the metal',
      pieces: ['copper', 'copper too', 'thick'],
    });
  });

  it('is no trouble where only spares are of a metal without stock', async () => {
    const plan = await planned({
      pieces: [piece('tin', 10, 10, 1, tin), piece('spare', 10, 10, 0, { ...copper, spares: 3 })],
      stock: [sheet('s', 100, 20, tin)],
      shear: either,
    });
    expect(plan.cost).toBe(100);
    expect(plan.spares).toEqual([]);
  });

  it('is piece too narrow where the shear cannot hold a piece', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 50, 10, 1), piece('thin', 50, 4, 2), piece('tiny', 3, 3, 1)],
      stock: [sheet('s', 100, 20)],
      shear: { ...either, narrowestStrip: 5 },
    };
    expect(await planCutting(problem)).toEqual({
      status: 'piece too narrow',
      pieces: ['thin', 'tiny'],
    });
    // A piece as narrow as its stock is not parted from anything that way.
    const exact = { ...problem, pieces: [piece('thin', 50, 4, 2)], stock: [sheet('s', 100, 4)] };
    expect((await planned(exact)).cost).toBe(100);
  });

  it('is piece too large, and says what only the shear keeps out', async () => {
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

  it('is piece too large for a piece that may not turn, or whose rolling direction is not to be had', async () => {
    const stock = [sheet('s', 40, 20, { rolling: 'along' })];
    const across = { mayTurn: false, rolling: 'across' } as const;
    for (const one of [piece('a', 20, 40, 1, { mayTurn: false }), piece('a', 40, 20, 1, across)]) {
      expect(await planCutting({ pieces: [one], stock, shear: either })).toEqual({
        status: 'piece too large',
        pieces: ['a'],
        largestStock: 's',
        forTheShear: [],
      });
    }
    expect(
      (
        await planned({
          pieces: [piece('a', 20, 40, 1, across)].map((p) => ({ ...p, mayTurn: true })),
          stock,
          shear: either,
        })
      ).cost,
    ).toBe(100);
  });

  it('is not enough stock, proven', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 50, 10, 5)],
      stock: [sheet('s', 100, 20, { canBuy: 1 })],
      shear: either,
    };
    expect(await planCutting(problem)).toEqual({ status: 'not enough stock' });
    const more = [...problem.stock, offcut('rest', 50, 10)];
    expect((await planned({ ...problem, stock: more })).cost).toBe(100);
  });

  it('is not enough stock where a piece would fit a sheet of which there is none', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 50, 10, 5)],
      stock: [sheet('s', 100, 20, { canBuy: 0 })],
      shear: either,
    };
    expect(await planCutting(problem)).toEqual({ status: 'not enough stock' });
  });

  it('is none found where the time was too short for a plan and for a proof', async () => {
    // First fit fills the sheet with the two large ones beside each other and runs out of it.
    const problem: CuttingProblem = {
      pieces: [piece('a', 7, 1, 2), piece('b', 5, 1, 2), piece('c', 3, 1, 4)].map((p) => ({
        ...p,
        mayTurn: false,
      })),
      stock: [sheet('s', 18, 1, { canBuy: 2 })],
      shear: { firstCut: 'along' },
    };
    expect(await planCutting(problem, { timeLimitSeconds: 0 })).toEqual({ status: 'none found' });
    expect((await planned(problem)).cost).toBe(200);
  });

  it('is a refusal of data that make no sense, before anything else', async () => {
    const problem: CuttingProblem = {
      pieces: [piece('a', 5, 5, 1)],
      stock: [sheet('s', 10, 10)],
      shear: either,
    };
    const wrong = { ...problem, pieces: [piece('a', -1, 5, 1)] };
    const failure = await planCutting(wrong).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(ProblemError);
    expect((failure as ProblemError).message).toContain('pieces[0].length');
  });
});
