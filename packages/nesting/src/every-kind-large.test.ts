import fc from 'fast-check';
import { describe, expect, inject, it } from 'vitest';
import { EVERY_KIND } from './kinds.test.support.js';
import { planCutting } from './plan-cutting.js';
import { LARGE } from './random-kinds.test.support.js';
import { verifyPlan } from './verify/verify-plan.js';

const OF_EACH = Math.ceil(inject('largeProblems') / EVERY_KIND.length);
/** Seconds for each: enough for most of them, so that the search is stopped at every point of it. */
const BRIEFLY = 0.03;

describe.each(EVERY_KIND)('large problems with $name', ({ problems }) => {
  it('cost no less than the bound and no more than by first fit', {
    timeout: 60_000 + OF_EACH * 1_000,
  }, async () => {
    let cut = 0;
    await fc.assert(
      fc.asyncProperty(problems(LARGE), async (problem) => {
        const outcome = await planCutting(problem, { timeLimitSeconds: BRIEFLY });
        // Without any time there is the plan by first fit, or none.
        const start = await planCutting(problem, { timeLimitSeconds: 0 });
        if (outcome.status !== 'planned') {
          expect(start.status).not.toBe('planned');
          return;
        }
        cut++;
        expect(verifyPlan(problem, outcome.plan)).toEqual([]);
        expect(outcome.plan.cost).toBeGreaterThanOrEqual(outcome.plan.bound.cost);
        // Where first fit runs out of stock, the search may find what it did not.
        if (start.status !== 'planned') {
          expect(start.status).toBe('none found');
          return;
        }
        expect(verifyPlan(problem, start.plan)).toEqual([]);
        expect(outcome.plan.cost).toBeLessThanOrEqual(start.plan.cost);
        expect(outcome.plan.cost).toBeGreaterThanOrEqual(start.plan.bound.cost);
      }),
      { numRuns: OF_EACH },
    );
    // Most must be cut, or little is checked; of those with everything at once fewer can be.
    expect(cut).toBeGreaterThan(OF_EACH / 10);
  });
});

declare module 'vitest' {
  interface ProvidedContext {
    /** How many large random problems to plan in all. */
    largeProblems: number;
  }
}
