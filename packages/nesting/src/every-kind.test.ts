import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { EVERY_KIND } from './kinds.test.support.js';
import { leastCost, loadHighs } from './least-cost.test.support.js';
import { planCutting } from './plan-cutting.js';
import { SMALL } from './random-kinds.test.support.js';
import { verifyPlan } from './verify/verify-plan.js';

/** In all; the same number of each kind, but more of those with everything at once. */
const PROBLEMS = 1_000;
const OF_EACH = Math.ceil(PROBLEMS / EVERY_KIND.length);
/** Of problems with everything at once only about every fifth can be cut. */
const TIMES_AS_MANY = 3;

/** How the plans came about, over all kinds. */
const seen = { planned: 0, searched: 0, proven: 0 };

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** Seconds for each; most end by themselves. */
const SECONDS = 2;

describe.each(EVERY_KIND)('small problems with $name', ({ name, problems }) => {
  const numRuns = OF_EACH * (name === 'everything at once' ? TIMES_AS_MANY : 1);
  it('cost what trying every cut finds', { timeout: 60_000 + numRuns * 3_000 }, async () => {
    let cut = 0;
    await fc.assert(
      fc.asyncProperty(problems(SMALL), async (problem) => {
        const best = leastCost(highs, problem);
        const outcome = await planCutting(problem, { timeLimitSeconds: SECONDS });
        if (outcome.status !== 'planned') {
          expect(best).toBe('cannot be cut');
          expect(outcome.status).not.toBe('none found');
          return;
        }
        const { plan } = outcome;
        cut++;
        seen.planned++;
        if (plan.effort.integerMasters > 0) seen.searched++;
        if (plan.bound.proven) seen.proven++;
        expect(verifyPlan(problem, plan)).toEqual([]);
        // A bound above the least cost would be false whatever the plan.
        expect(plan.bound.cost).toBeLessThanOrEqual(Number(best));
        expect(plan.cost).toBe(best);
      }),
      { numRuns },
    );
    // The comparison means something only where many of them can be cut.
    expect(cut).toBeGreaterThan(OF_EACH / 5);
  });
});

it('some need more than the linear bound, and nearly all are proven', () => {
  // Or the integer search, and its proofs, would go unchecked.
  expect(seen.searched).toBeGreaterThan(5);
  expect(seen.proven).toBeGreaterThan(0.9 * seen.planned);
});
