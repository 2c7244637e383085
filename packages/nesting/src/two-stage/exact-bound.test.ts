import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planCutting } from '../plan-cutting.js';
import { randomProblem } from '../random-problem.test.support.js';
import { stockClasses } from '../stock-classes.js';
import { exactBound, exactScale } from './exact-bound.js';
import { leastMoney } from './objective.js';
import { Pricing } from './pricing.js';
import { stripFamilies } from './strip-families.js';

describe('exactBound', () => {
  it('is never above the cost of a plan, whatever the multipliers', async () => {
    let above0 = 0;
    await fc.assert(
      fc.asyncProperty(
        randomProblem({ pieceTypes: 4, quantity: 8, sheetSizes: 2, offcuts: 2, side: 20 }),
        fc.array(fc.integer({ min: 0, max: 3 * 1024 }), { minLength: 4, maxLength: 4 }),
        async (problem, values) => {
          const outcome = await planCutting(problem, { timeLimitSeconds: 5 });
          if (outcome.status !== 'planned') return;
          const classes = stockClasses(problem);
          const faces = stripFamilies(problem, classes);
          const demand = problem.pieces.map((piece) => piece.quantity);
          const pieces = Float64Array.from(demand, (_, i) => values[i]);
          const priced = new Pricing(problem, faces).price(pieces);
          const bound = exactBound(priced, faces, classes, demand, leastMoney, {
            scale: 1024,
            pieces,
            budget: 0,
          });
          expect(Number.isInteger(bound.scaled)).toBe(true);
          expect(bound.scaled).toBeLessThanOrEqual(outcome.plan.cost * 1024);
          if (bound.scaled > 0) above0++;
        },
      ),
      { numRuns: 120 },
    );
    // A bound that is 0 or less proves nothing; enough of them must say something.
    expect(above0).toBeGreaterThan(10);
  });
});

describe('exactScale', () => {
  it('is the finest power of two that keeps sums exact', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e12 }), (cost) => {
        const scale = exactScale(cost);
        expect(Math.log2(scale) % 1).toBe(0);
        expect(cost * scale).toBeLessThan(2 ** 52);
      }),
    );
  });
});
