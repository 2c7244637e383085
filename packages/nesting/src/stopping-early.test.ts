import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVERY_KIND } from './kinds.test.support.js';
import type { CuttingPlan } from './plan.js';
import { type PlanProgress, planCutting } from './plan-cutting.js';
import type { CuttingProblem } from './problem.js';
import { LARGE, type Size, SMALL } from './random-kinds.test.support.js';
import { verifyPlan } from './verify/verify-plan.js';

const RUNS = 60;

const problemsOf = (size: Size) => fc.oneof(...EVERY_KIND.map(({ problems }) => problems(size)));

/** What comes of a search that is called off as soon as it has handed out so many plans. */
async function calledOffAfter(plans: number, problem: CuttingProblem) {
  let handedOut = 0;
  const signal = { aborted: false };
  const outcome = await planCutting(problem, {
    signal,
    onPlan: () => {
      signal.aborted = ++handedOut >= plans;
    },
  });
  return { outcome, calledOff: signal.aborted };
}

describe('problems of every kind', () => {
  it('give plans on the way: verified, each cheaper, the last as cheap as the end', async () => {
    let planned = 0;
    await fc.assert(
      fc.asyncProperty(problemsOf(LARGE), async (problem) => {
        const plans: CuttingPlan[] = [];
        const outcome = await planCutting(problem, {
          timeLimitSeconds: 0.1,
          onPlan: (plan) => plans.push(plan),
        });
        if (outcome.status !== 'planned') return;
        planned++;
        expect(plans.length).toBeGreaterThan(0);
        for (const [i, plan] of plans.entries()) {
          expect(verifyPlan(problem, plan)).toEqual([]);
          if (i > 0) expect(plan.cost).toBeLessThan(plans[i - 1].cost);
          // A bound is a bound on every plan, also on those that come later.
          expect(plan.bound.cost).toBeLessThanOrEqual(outcome.plan.cost);
        }
        expect(outcome.plan.cost).toBeLessThanOrEqual(plans[plans.length - 1].cost);
      }),
      { numRuns: RUNS },
    );
    expect(planned).toBeGreaterThan(RUNS / 4);
  });

  it('tell of progress that agrees with the end', async () => {
    await fc.assert(
      fc.asyncProperty(problemsOf(SMALL), async (problem) => {
        const told: PlanProgress[] = [];
        const outcome = await planCutting(problem, { onProgress: (step) => told.push(step) });
        if (outcome.status !== 'planned') return;
        const { plan } = outcome;
        expect(told.length).toBeGreaterThan(0);
        for (const { phase, cost, bound, columns } of told) {
          expect(phase).not.toBe('');
          expect(bound).toBeLessThanOrEqual(plan.cost);
          if (cost !== undefined) expect(cost).toBeGreaterThanOrEqual(plan.bound.cost);
          expect(Number.isInteger(columns) && columns >= 0).toBe(true);
        }
        expect(told[told.length - 1].columns).toBeGreaterThan(0);
      }),
      { numRuns: RUNS },
    );
  });

  it('called off, give the best plan so far and a bound that holds', async () => {
    let early = 0;
    await fc.assert(
      fc.asyncProperty(
        problemsOf(SMALL),
        fc.integer({ min: 1, max: 2 }),
        async (problem, plans) => {
          const whole = await planCutting(problem, { timeLimitSeconds: 2 });
          const { outcome, calledOff } = await calledOffAfter(plans, problem);
          if (!calledOff || outcome.status !== 'planned' || whole.status !== 'planned') return;
          early++;
          // A plan that was proven before is called what it is.
          const { bound, effort } = outcome.plan;
          if (!bound.proven) expect(effort.ending).toBe('called off');
          expect(verifyPlan(problem, outcome.plan)).toEqual([]);
          expect(outcome.plan.cost).toBeGreaterThanOrEqual(whole.plan.cost);
          expect(outcome.plan.bound.cost).toBeLessThanOrEqual(whole.plan.cost);
        },
      ),
      { numRuns: RUNS },
    );
    expect(early).toBeGreaterThan(RUNS / 8);
  });
});

describe('a problem of two metals', () => {
  const sheet = (metal: string) =>
    ({ kind: 'sheet', id: metal, metal, length: 300, width: 200, price: 9, onHand: 0 }) as const;
  const piece = (metal: string, length: number) =>
    ({ id: `${metal} ${length}`, metal, length, width: 60, quantity: 9, mayTurn: true }) as const;
  const problem: CuttingProblem = {
    pieces: [piece('tin', 110), piece('tin', 70), piece('copper', 130), piece('copper', 50)],
    stock: [
      { ...sheet('tin'), canBuy: 'any' },
      { ...sheet('copper'), canBuy: 'any' },
    ],
    shear: { firstCut: 'either' },
  };

  it('has a whole plan from the start, and tells what the whole costs', async () => {
    const { outcome } = await calledOffAfter(1, problem);
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(verifyPlan(problem, outcome.plan)).toEqual([]);
    const costs: (number | undefined)[] = [];
    const end = await planCutting(problem, { onProgress: ({ cost }) => costs.push(cost) });
    expect(costs).not.toContain(undefined);
    expect(end.status === 'planned' && end.plan.cost).toBe(costs[costs.length - 1]);
  });

  it('is told at once to be too large for one of them, with nothing handed out', async () => {
    const plans: CuttingPlan[] = [];
    const large = { ...problem, pieces: [...problem.pieces, piece('copper', 900)] };
    const outcome = await planCutting(large, { onPlan: (plan) => plans.push(plan) });
    expect(outcome).toMatchObject({ status: 'piece too large', pieces: ['copper 900'] });
    expect(plans).toEqual([]);
  });
});
