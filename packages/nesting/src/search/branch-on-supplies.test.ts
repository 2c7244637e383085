import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { leastCost, loadHighs } from '../least-cost.test.support.js';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { barProblem, piece, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem } from '../problem.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { SupplyBranches } from './branch-on-supplies.js';
import { groundOf } from './ground.test.support.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** Coins of the linear bound and of the bound after branching, and nodes visited. */
async function bounds(problem: CuttingProblem, enough = (_: number) => false) {
  const { ground } = groundOf(problem);
  const master = new BandMaster(ground);
  try {
    const root = await solveLinear({ ...ground, master, enough: () => false });
    const scaled = await new SupplyBranches(ground.classes, root).raise({
      ground,
      master,
      enough: (value) => enough(value / ground.scale),
    });
    return {
      linear: root.bound.scaled / ground.scale,
      branched: scaled / ground.scale,
      nodes: ground.effort.nodes,
    };
  } finally {
    master.close();
  }
}

describe('SupplyBranches', () => {
  it('raises the bound and never above the least cost', async () => {
    const features = {
      limitedStock: true,
      offcuts: true,
      bookValues: true,
      packs: true,
      kerf: true,
      keep: true,
    };
    const seen = { raised: 0, closed: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind(features, SMALL), fc.boolean(), async (drawn, valued) => {
        const problem = valued ? drawn : { ...drawn, keep: [] };
        const { ground } = groundOf(problem);
        if (ground.classes.length === 0) return;
        const least = leastCost(highs, problem);
        if (least === 'cannot be cut') return;
        const { linear, branched } = await bounds(problem);
        expect(branched).toBeGreaterThanOrEqual(linear);
        expect(branched).toBeLessThanOrEqual(least);
        if (branched > linear + 1e-6) seen.raised++;
        if (Math.ceil(branched) === least) seen.closed++;
      }),
      { numRuns: 60 },
    );
    expect(seen.raised).toBeGreaterThan(5);
    expect(seen.closed).toBeGreaterThan(5);
  });

  it('closes what comes of sheets being whole', async () => {
    // Half a sheet of 10 coins is worth 5 in the linear plan, but sheets come whole.
    const half = await bounds({
      pieces: [piece('a', 50, 10, 1)],
      stock: [sheet('s', 100, 10, { price: 10 })],
      shear: { firstCut: 'either' },
    });
    expect(half.linear).toBeLessThanOrEqual(10);
    expect(half.branched).toBeCloseTo(10, 3);
  });

  it('branches on nothing but what is bought where that is asked for', async () => {
    // One and a half of the sheets in the shop would do, at 10 in the books.
    const { ground } = groundOf({
      pieces: [piece('a', 50, 10, 3)],
      stock: [sheet('s', 100, 10, { price: 30, onHand: 2, bookValue: 10 })],
      shear: { firstCut: 'either' },
    });
    const master = new BandMaster(ground);
    const root = await solveLinear({ ...ground, master, enough: () => false });
    const branched = (onlyBought: boolean) =>
      new SupplyBranches(ground.classes, root).raise({
        ground,
        master,
        enough: () => false,
        onlyBought,
      });
    expect(await branched(true)).toBe(root.bound.scaled);
    expect(ground.effort.nodes).toBe(0);
    expect((await branched(false)) / ground.scale).toBeCloseTo(20, 3);
    expect(ground.effort.nodes).toBeGreaterThan(0);
    master.close();
  });

  it('leaves out nodes that are closed, and has none left once all are', async () => {
    // 4 of the dear sheets and 1 of the cheap would do by halves: 3.5 dear ones are as good.
    const { ground } = groundOf({
      pieces: [piece('a', 50, 10, 7)],
      stock: [
        sheet('s', 100, 10, { price: 10, canBuy: 4 }),
        sheet('t', 50, 10, { price: 6, canBuy: 3 }),
      ],
      shear: { firstCut: 'either' },
    });
    const master = new BandMaster(ground);
    const root = await solveLinear({ ...ground, master, enough: () => false });
    const asked: number[] = [];
    let last: readonly (readonly [number, number])[] = [];
    const branched = (closes: (times: number) => boolean) => {
      asked.length = 0;
      return new SupplyBranches(ground.classes, root).raise({
        ground,
        master,
        enough: () => false,
        raised: async ({ plan, scaled, classes }) => {
          asked.push(plan.bound.scaled / ground.scale);
          last = classes.flatMap(({ supplies }) =>
            supplies.map((s) => [s.least, s.count] as const),
          );
          return closes(asked.length) ? Number.POSITIVE_INFINITY : scaled;
        },
      });
    };
    // Only what is settled is asked of: three dear ones, one cheap.
    expect((await branched(() => false)) / ground.scale).toBeCloseTo(36, 3);
    expect(asked.map((coins) => Math.round(coins))).toEqual([36]);
    expect(last).toEqual([
      [3, 3],
      [1, 1],
    ]);
    // The next best takes two dear ones and three cheap ones.
    expect((await branched((times) => times === 1)) / ground.scale).toBeCloseTo(38, 3);
    expect(asked.map((coins) => Math.round(coins))).toEqual([36, 38]);
    expect(await branched(() => true)).toBe(Number.POSITIVE_INFINITY);
    master.close();
  });

  it('stops where the bound is enough', async () => {
    const rolls = barProblem(110, [
      [20, 48],
      [45, 35],
      [50, 24],
      [55, 10],
      [75, 8],
    ]);
    expect((await bounds(rolls, () => true)).nodes).toBe(0);
    const { linear, branched } = await bounds(rolls, (coins) => coins > 46.5);
    // Fourer, Gay, Kernighan, the AMPL book (from memory; the linear bound recomputed).
    expect(linear).toBeCloseTo(46.25, 4);
    expect(branched).toBeGreaterThan(46.5);
    expect(branched).toBeLessThanOrEqual(47);
  });
});
