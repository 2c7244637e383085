import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deadline } from '../deadline.js';
import { leastCost, loadHighs } from '../least-cost.test.support.js';
import { BandMaster } from '../master/band-master.js';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem } from '../problem.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { Incumbent } from './incumbent.js';
import { RoughBranches } from './rough-branches.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const ENDLESS: Deadline = { left: () => 1e6 };

/** Coins that the bound is raised to, first by rough patterns alone, and how often all of the kind were priced. */
async function raised(problem: CuttingProblem, before?: Deadline) {
  const set = groundOf(problem);
  let priced = 0;
  const { pricer, rough } = set.ground;
  if (rough === undefined) throw new Error('nothing is rough here');
  const counted = {
    ...set.ground,
    inTurn: [...set.ground.inTurn.slice(0, -1)],
    pricer: {
      price: (...asked: Parameters<typeof pricer.price>) => {
        priced++;
        return pricer.price(...asked);
      },
    },
  };
  counted.inTurn.push(counted.pricer);
  const incumbent = new Incumbent(counted, {});
  const master = new BandMaster(counted);
  const branches = new RoughBranches(counted, rough, incumbent, master);
  try {
    const early = before && (await branches.raise(before, false)) / counted.scale;
    const first = (await branches.raise(ENDLESS, false)) / counted.scale;
    const pricedRoughly = priced;
    const then = (await branches.raise(ENDLESS, true)) / counted.scale;
    return { early, first, then, before: pricedRoughly, priced };
  } finally {
    branches.close();
    master.close();
  }
}

const keep = [{ leastLength: 360, leastWidth: 60, coinsPerMillion: 175, trouble: 5 }];

describe('RoughBranches', () => {
  it('bounds an everyday order closely before any pattern of the kind is priced', async () => {
    for (const stages of [3, 'free'] as const) {
      const order = {
        pieces: [
          piece('a', 587, 62, 5, { mayTurn: true }),
          piece('b', 326, 56, 11, { mayTurn: true }),
        ],
        stock: [sheet('s', 1400, 1000, { price: 650 }), sheet('t', 1000, 700, { price: 350 })],
        shear: { firstCut: 'either', stages, longestCut: 1800, narrowestStrip: 10 },
        keep,
      } as const;
      const { first, then, before } = await raised(order);
      expect(before).toBe(0);
      // A small sheet for 350, of which 317,214 square ticks are left: 55 coins, less some of the trouble of 5.
      expect(first).toBeGreaterThan(298);
      // There is a plan in two stages for 307.
      expect(then).toBeLessThanOrEqual(307);
      expect(then).toBeGreaterThan(first + 1);
    }
  });

  it('goes on where time was over', async () => {
    const order = {
      pieces: [piece('a', 394, 62, 4), piece('b', 336, 56, 10), piece('c', 292, 62, 31)],
      stock: [sheet('s', 1400, 1000, { price: 650 }), sheet('t', 1000, 700, { price: 350 })],
      shear: { firstCut: 'either', stages: 3 },
      keep,
    } as const;
    const { first: whole } = await raised(order);
    for (const asked of [0, 1, 2, 3]) {
      let left = asked;
      const { early, first } = await raised(order, { left: () => (left-- > 0 ? 1e6 : 0) });
      expect(early).toBeLessThan(whole - 1);
      expect(first).toBeCloseTo(whole, 3);
    }
  });

  it('never bounds above the least cost', async () => {
    const features = {
      stages: 'any',
      kerf: true,
      narrowestStrip: true,
      longestCut: true,
      limitedStock: true,
      offcuts: true,
      packs: true,
      bookValues: true,
      keep: true,
    } as const;
    const seen = { rough: 0, closed: 0, raised: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind(features, SMALL), async (problem) => {
        const { ground } = groundOf(problem);
        if (ground.rough === undefined || ground.classes.length === 0) return;
        const least = leastCost(highs, problem);
        if (least === 'cannot be cut') return;
        const { first, then } = await raised(problem);
        expect(then).toBeGreaterThanOrEqual(first);
        expect(then).toBeLessThanOrEqual(least);
        seen.rough++;
        if (then > first + 1e-6) seen.raised++;
        if (Math.ceil(then) === least) seen.closed++;
      }),
      { numRuns: 150 },
    );
    expect(seen.rough).toBeGreaterThan(30);
    expect(seen.raised).toBeGreaterThan(3);
    expect(seen.closed).toBeGreaterThan(10);
  });

  it('branches on what is bought before all patterns of the kind, on offcuts after them', async () => {
    const order = {
      pieces: [
        piece('a', 394, 62, 4, { mayTurn: true }),
        piece('b', 336, 56, 10, { mayTurn: true }),
        piece('c', 392, 62, 11, { mayTurn: true }),
      ],
      stock: [
        sheet('s', 1400, 1000, { price: 650 }),
        sheet('t', 1000, 700, { price: 350 }),
        offcut('A', 416, 280, { bookValue: 15 }),
        offcut('B', 376, 215, { bookValue: 9 }),
        offcut('C', 700, 297, { bookValue: 31 }),
        offcut('D', 1000, 191, { bookValue: 28 }),
        offcut('E', 1400, 84, { bookValue: 15 }),
      ],
      shear: { firstCut: 'either', stages: 3, longestCut: 1800, narrowestStrip: 10 },
      keep,
    } as const;
    const { first, then, before, priced } = await raised(order);
    expect(before).toBe(0);
    expect(first).toBeGreaterThan(320);
    // 327 is what it can be cut for.
    expect(then).toBeGreaterThan(325.5);
    expect(then).toBeLessThanOrEqual(327);
    expect(priced).toBeGreaterThan(1);
  });
});
