import { describe, expect, it } from 'vitest';
import { type Deadline, deadlineIn } from './deadline.js';
import { areaBound } from './master/area-bound.js';
import { boundBy } from './master/column-generation.js';
import { patternOf } from './pattern/pattern-of.js';
import { planCutting } from './plan-cutting.js';
import { offcut, piece, sheet } from './plan-cutting.test.support.js';
import { PlanningWithoutValue } from './planning-without-value.js';
import type { CuttingProblem, KeepRule } from './problem.js';
import { seededRandom } from './random.js';
import { available } from './search/class-supplies.js';
import type { SearchGround } from './search/ground.js';
import { groundOf } from './search/ground.test.support.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './search/planned.js';
import { search } from './search/search.js';

const KEEP: KeepRule = { leastLength: 300, leastWidth: 80, coinsPerMillion: 200, trouble: 5 };

/** Many of each of a few strips, two sizes of sheet and a rack. */
function order(seed: number, most: number): CuttingProblem {
  const random = seededRandom(7919 * seed);
  const between = (low: number, high: number) => low + Math.floor(random() * (high - low + 1));
  const widths = [between(44, 110), between(44, 110)];
  const pieces = Array.from({ length: 6 }, (_, i) =>
    piece(`p${i}`, between(200, 900), widths[i % 2], between(most / 2, most), { mayTurn: true }),
  );
  const rack = Array.from({ length: 4 }, (_, i) =>
    offcut(`o${i}`, between(400, 1000), between(100, 500)),
  );
  return {
    pieces,
    stock: [
      sheet('large', 2000, 1280, { price: 1150 }),
      sheet('small', 1424, 1024, { price: 690 }),
      ...rack,
    ],
    shear: { firstCut: 'either', stages: 2 },
  };
}

function planningOf(problem: CuttingProblem, ground: SearchGround): PlanningWithoutValue {
  const own = { problem, worth: KEEP, over: () => false, seed: 1 };
  return new PlanningWithoutValue({ ...ground, ...own });
}

describe('planning as if offcuts and remnants were worth nothing', () => {
  it.each([1, 3])(
    'first makes plans of many pieces no dearer than that, order %i',
    async (seed) => {
      const problem = order(seed, 300);
      const timeLimitSeconds = 5;
      const without = await planCutting(problem, { timeLimitSeconds });
      const kept = await planCutting({ ...problem, keep: [KEEP] }, { timeLimitSeconds });
      if (without.status !== 'planned' || kept.status !== 'planned') throw new Error('no plan');
      const bought = without.plan.buy.reduce((sum, { cost }) => sum + cost, 0);
      // At worst all of the rack is used up, and nothing new is kept.
      const rack = problem.stock
        .filter(({ kind }) => kind === 'offcut')
        .reduce((sum, { length, width }) => sum + (length * width * KEEP.coinsPerMillion) / 1e6, 0);
      expect(without.plan.bound.proven).toBe(true);
      expect(kept.plan.cost).toBeLessThanOrEqual(bought + rack);
      expect(kept.plan.bound.cost).toBeLessThanOrEqual(kept.plan.cost);
    },
  );

  it('is asked for where there are many of each piece and many sheets, and taken where it is better', async () => {
    /** A search that has no time for anything after it has asked. */
    const spied = async (problem: CuttingProblem, known?: readonly Planned[]) => {
      const { ground, start } = groundOf(problem);
      let times = 0;
      const withoutValue = {
        plan: async (_: Deadline, tell: (better?: readonly Planned[]) => void) => {
          times++;
          tell(known);
          return undefined;
        },
        leaving: async () => undefined,
      };
      const deadline = { left: () => (times > 0 ? 0 : 1e6) };
      const request = { known: start, brief: false, seed: 1 };
      const { cost } = await search({ ...request, ground: { ...ground, withoutValue, deadline } });
      return { times, cost };
    };
    const asked = { many: 0, few: 0, better: 0 };
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      asked.few += (await spied(order(seed, 8))).times;
      const problem = order(seed, 300);
      const without = await spied(problem);
      asked.many += without.times;
      if (without.times === 0) continue;
      const { ground, start } = groundOf(problem);
      const deadline = deadlineIn(2, Date.now);
      const request = { ground: { ...ground, deadline }, known: start, brief: false, seed: 1 };
      const { planned, cost } = await search(request);
      expect((await spied(problem, planned)).cost).toBe(Math.min(cost, without.cost));
      if (cost < without.cost) asked.better++;
    }
    expect(asked.many).toBeGreaterThan(1);
    expect(asked.better).toBeGreaterThan(0);
    expect(asked.few).toBe(0);
  });

  it('bounds the order with that value by what its pieces are worth without', async () => {
    const problem: CuttingProblem = { ...order(3, 300), keep: [KEEP] };
    const { ground, start } = groundOf(problem);
    const planning = planningOf(problem, ground);
    const multipliers = await planning.plan(deadlineIn(2, Date.now), () => {});
    if (multipliers === undefined) throw new Error('no linear plan');
    // At another scale they are the same but for rounding.
    const coarse = { ...ground, scale: ground.scale / 1024 };
    const bound = boundBy(ground, multipliers).scaled / ground.scale;
    const coarsely = boundBy(coarse, multipliers).scaled / coarse.scale;
    expect(Math.abs(bound - coarsely)).toBeLessThan(1);
    expect(bound).toBeGreaterThan(areaBound(ground) / ground.scale);
    // Nothing is left to do once the plan is made but to look at what it bounds.
    let left = 2;
    const deadline = { left: () => (left > 1 ? 1e6 : left-- > 0 ? 1 : 0) };
    const withoutValue = {
      plan: async () => {
        left = 1;
        return multipliers;
      },
      leaving: async () => undefined,
    };
    const request = { known: start, brief: false, seed: 1 };
    const found = await search({ ...request, ground: { ...ground, withoutValue, deadline } });
    expect(found.bound).toBe(Math.ceil(bound));
    const { cost } = await search({
      ...request,
      ground: { ...ground, deadline: deadlineIn(2, Date.now) },
    });
    expect(bound).toBeLessThanOrEqual(cost);
  });

  it('leaves a remnant that is worth what was asked for, for no more money', async () => {
    const seen = { found: 0, none: 0 };
    for (const seed of [1, 2, 3]) {
      const problem = order(seed, 60);
      const { ground, start, boxes, rules } = groundOf({ ...problem, keep: [KEEP] });
      const planning = planningOf(problem, ground);
      let best = start;
      await planning.plan(deadlineIn(2, Date.now), (better) => {
        best = better ?? best;
      });
      if (best === undefined) throw new Error('no plan');
      const bought = (planned: readonly Planned[]) =>
        planned.reduce((sum, { pattern, count }) => {
          const { supplies } = ground.classes[pattern.stockClass];
          return sum + (supplies[0].bought ? count * supplies[0].price : 0);
        }, 0);
      for (const coins of [10, 30, 100, 900]) {
        const left = await planning.leaving(coins, best, deadlineIn(2, Date.now));
        if (left === undefined) {
          seen.none++;
          continue;
        }
        seen.found++;
        const anew = left.map(({ pattern, count }) => ({
          pattern: patternOf(pattern.part, pattern.stockClass, boxes[pattern.stockClass], rules),
          count,
        }));
        expect(demandLeft(ground.demand, anew)).toEqual(ground.demand.map(() => 0));
        expect(keptCoins(anew)).toBeGreaterThanOrEqual(coins);
        expect(bought(anew)).toBeLessThanOrEqual(bought(best));
        const used = sheetsUsed(anew, boxes.length);
        expect(used.every((n, g) => n <= available(ground.classes[g]))).toBe(true);
      }
    }
    expect(seen.found).toBeGreaterThan(2);
    // No remnant is worth more than the sheet that it is left of.
    expect(seen.none).toBeGreaterThan(2);
  });
});
