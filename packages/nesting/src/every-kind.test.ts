import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { EVERY_KIND } from './kinds.test.support.js';
import { leastCost, loadHighs } from './least-cost.test.support.js';
import { planCutting } from './plan-cutting.js';
import { SMALL } from './random-kinds.test.support.js';
import { verifyPlan } from './verify/verify-plan.js';

/** In all; the same number of each kind. */
const PROBLEMS = 440;
const OF_EACH = Math.ceil(PROBLEMS / EVERY_KIND.length);

/** How the plans came about, over all kinds. */
const seen = { planned: 0, searched: 0, proven: 0 };

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

describe.each(EVERY_KIND)('small problems with $name', ({ planned, problems }) => {
  it.skipIf(!planned)('cost what trying every cut finds', async () => {
    let cut = 0;
    await fc.assert(
      fc.asyncProperty(problems(SMALL), async (problem) => {
        const least = leastCost(highs, problem);
        const outcome = await planCutting(problem);
        if (outcome.status !== 'planned') {
          expect(least).toBe('cannot be cut');
          expect(outcome.status).not.toBe('none found');
          return;
        }
        cut++;
        seen.planned++;
        if (outcome.plan.effort.integerMasters > 0) seen.searched++;
        if (outcome.plan.bound.proven) seen.proven++;
        expect(verifyPlan(problem, outcome.plan)).toEqual([]);
        // A bound above the least cost would be false whatever the plan.
        expect(outcome.plan.bound.cost).toBeLessThanOrEqual(Number(least));
        expect(outcome.plan.cost).toBe(least);
      }),
      { numRuns: OF_EACH },
    );
    // The comparison means something only where many of them can be cut.
    expect(cut).toBeGreaterThan(OF_EACH / 5);
  });
});

it('some need more than the linear bound, and most are proven', () => {
  // Or the integer search, and its proofs, would go unchecked.
  expect(seen.searched).toBeGreaterThan(5);
  expect(seen.proven).toBeGreaterThan(0.5 * seen.planned);
});
