import { describe, expect, it } from 'vitest';
import { type PlanProgress, planCutting } from './plan-cutting.js';
import { either, piece, planned, sheet } from './plan-cutting.test.support.js';
import type { CuttingProblem } from './problem.js';
import { verifyPlan } from './verify/verify-plan.js';

const small: CuttingProblem = {
  pieces: [piece('a', 37, 5, 31), piece('b', 29, 4, 44), piece('c', 18, 7, 25)],
  stock: [sheet('s', 90, 60, { price: 7 }), sheet('t', 60, 45, { price: 4 })],
  shear: either,
};

const many: CuttingProblem = {
  pieces: Array.from({ length: 30 }, (_, i) => piece(`${i}`, 30 + i * 7, 20 + i * 3, 9)),
  stock: [sheet('s', 600, 300)],
  shear: either,
};

describe('the options of planCutting', () => {
  it.each([2, 3, 'free'] as const)('one seed gives one plan, with stages %s', async (stages) => {
    const problem = { ...small, shear: { ...either, stages } };
    const one = await planCutting(problem, { seed: 5 });
    expect(await planCutting(problem, { seed: 5 })).toEqual(one);
    // Another seed may give another plan; it does not change what is proven.
    const other = await planned(problem, { seed: 6 });
    expect(one.status === 'planned' && one.plan.bound).toEqual(other.bound);
  });

  it('one seed gives one plan, though the machine is four times as busy', async () => {
    const one = await planned(small, { now: Date.now });
    const busy = await planned(small, { now: () => 4 * Date.now() });
    expect(one.bound.proven).toBe(true);
    expect(busy).toEqual(one);
  });

  it('without time give first fit with an honest bound', async () => {
    const plan = await planned(many, { timeLimitSeconds: 0 });
    expect(plan.effort).toMatchObject({
      rounds: 0,
      integerMasters: 0,
      nodes: 0,
      ending: 'time limit',
    });
    expect(verifyPlan(many, plan)).toEqual([]);
    expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
    expect(plan.bound.proven).toBe(plan.bound.cost === plan.cost);
  });

  it('go by the clock that is handed in', async () => {
    let clock = 0;
    const now = () => (clock += 1000);
    const plan = await planned(many, { timeLimitSeconds: 10, now });
    expect(plan.effort.ending).toBe('time limit');
    expect(plan.effort.rounds).toBeGreaterThan(0);
    // Every round looks at the clock.
    expect(plan.effort.rounds).toBeLessThan(11);
    const start = await planned(many, { timeLimitSeconds: 0 });
    expect(plan.cost).toBeLessThanOrEqual(start.cost);
  });

  it('call planning off by a signal, before it starts or later', async () => {
    const signal = { aborted: true };
    const before = await planned(many, { signal });
    expect(before.effort).toMatchObject({ rounds: 0, ending: 'called off' });
    expect(before.layouts).toEqual((await planned(many, { timeLimitSeconds: 0 })).layouts);

    const later = { aborted: false };
    let told = 0;
    const during = await planned(many, {
      signal: later,
      onProgress: ({ phase }) => {
        if (phase === 'better plan') told++;
        if (phase === 'linear plan') later.aborted = true;
      },
    });
    expect(told).toBe(1);
    expect(during.effort.ending).toBe('called off');
    expect(during.effort.rounds).toBeGreaterThan(0);
    expect(during.cost).toBe(before.cost);
    expect(during.bound.cost).toBeGreaterThan(0);
    expect(verifyPlan(many, during)).toEqual([]);
  });

  it('tell of progress: costs that fall, bounds that rise, up to the plan itself', async () => {
    const tin = { metal: 'tinplate' };
    const problem: CuttingProblem = {
      ...small,
      pieces: [...small.pieces, piece('d', 40, 30, 7, tin), piece('e', 25, 20, 9, tin)],
      stock: [...small.stock, sheet('u', 80, 70, { ...tin, price: 11 })],
    };
    const told: PlanProgress[] = [];
    const plan = await planned(problem, { onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(3);
    const last = told[told.length - 1];
    expect(last.cost).toBe(plan.cost);
    expect(last.bound).toBe(plan.bound.cost);
    told.forEach(({ phase, cost, bound }, i) => {
      expect(phase).not.toBe('');
      expect(bound).toBeLessThanOrEqual(plan.bound.cost);
      if (i === 0) return;
      expect(bound).toBeGreaterThanOrEqual(told[i - 1].bound);
      // The cost rises only where the next metal comes in, all of which is bought anew.
      const before = told[i - 1];
      if (cost === undefined || before.cost === undefined || cost <= before.cost) return;
      expect(phase).toBe('better plan');
    });
    expect(new Set(told.map(({ phase }) => phase))).toContain('linear plan');
  });

  it('share the time out among the metals', async () => {
    const metals = ['copper', 'brass', 'tinplate'];
    const problem: CuttingProblem = {
      pieces: metals.flatMap((metal) =>
        many.pieces.map((p) => ({ ...p, metal, id: `${metal} ${p.id}` })),
      ),
      stock: metals.map((metal) => sheet(metal, 600, 300, { metal })),
      shear: either,
    };
    let clock = 0;
    const plan = await planned(problem, { timeLimitSeconds: 200, now: () => (clock += 100) });
    const bounds = metals.map(async (metal) => {
      const one = {
        ...problem,
        pieces: problem.pieces.filter((p) => p.metal === metal),
        stock: problem.stock.filter((s) => s.metal === metal),
      };
      let own = 0;
      return (await planned(one, { timeLimitSeconds: 60, now: () => (own += 100) })).bound.cost;
    });
    const apart = (await Promise.all(bounds)).reduce((sum, bound) => sum + bound, 0);
    expect(apart).toBeGreaterThan(0);
    // Each metal got to a bound about as good as in a third of the time by itself.
    expect(plan.bound.cost).toBeGreaterThan(0.9 * apart);
    expect(verifyPlan(problem, plan)).toEqual([]);
  });
});
