import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planCutting } from './plan-cutting.js';
import { LARGE, randomOfKind } from './random-kinds.test.support.js';
import type { Engines } from './solvers/engine-choice.js';
import { javascriptEngine } from './solvers/javascript-engine.js';
import { verifyPlan } from './verify/verify-plan.js';

/** As where WebAssembly cannot run. */
const engines: Engines = { small: javascriptEngine, large: async () => undefined };

describe('without the large engine', () => {
  it('orders are planned all the same, with plans and bounds that hold', async () => {
    let planned = 0;
    await fc.assert(
      fc.asyncProperty(randomOfKind({ offcuts: true }, LARGE), async (problem) => {
        const outcome = await planCutting(problem, { engines, timeLimitSeconds: 1 });
        if (outcome.status !== 'planned') return;
        planned++;
        expect(verifyPlan(problem, outcome.plan)).toEqual([]);
        expect(outcome.plan.bound.cost).toBeLessThanOrEqual(outcome.plan.cost);
      }),
      { numRuns: 15 },
    );
    expect(planned).toBeGreaterThan(5);
  });
});
