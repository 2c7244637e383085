import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenPlan, problems } from './even-plan.test.support.js';
import { boxRowOf, type PlanEntropy, planEntropy } from './plan-entropy.js';
import { sheetsUsed } from './planned.js';
import { rooted } from './rooted.test.support.js';

/** By row, what the expected numbers come to. */
function sumsOf({ numbers }: PlanEntropy): readonly number[] {
  const sums = new Array<number>(numbers.rows).fill(0);
  numbers.amounts.forEach((amount, column) => {
    for (const [row, count] of numbers.entriesOf(column)) sums[row] += count * amount;
  });
  return sums;
}

describe('the most even plan of sheets and bands', () => {
  it('cuts the demand from all the sheets there are, and bands from the slots that they have', async () => {
    const seen = { plans: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(problems, async (problem) => {
        const even = await evenPlan(problem);
        seen[even === undefined ? 'none' : 'plans']++;
        if (even === undefined) return;
        const { plan, demand, counts, book } = even;
        const sums = sumsOf(plan);
        demand.forEach((quantity, piece) => {
          expect(sums[piece] / Math.max(1, quantity)).toBeCloseTo(1, 3);
        });
        plan.slots.forEach((_, index) => {
          expect(sums[demand.length + index]).toBeCloseTo(0, 2);
        });
        for (const pattern of plan.sheets.keys()) {
          const row = boxRowOf(plan, pattern);
          expect(sums[row]).toBeCloseTo(counts[book.sheets[plan.sheets[pattern]].box], 2);
        }
        // What lacks is hardly ever expected, where a linear plan has all.
        const firstLack = plan.sheets.length + plan.bands.length + demand.length;
        const lacking = plan.numbers.amounts.subarray(firstLack, firstLack + demand.length);
        expect(lacking.reduce((sum, amount) => sum + amount, 0)).toBeLessThan(0.05);
      }),
      { numRuns: 25 },
    );
    expect(seen.plans).toBeGreaterThan(10);
  });

  it('is none where there are too few sheets', async () => {
    let tried = 0;
    await fc.assert(
      fc.asyncProperty(problems, async (problem) => {
        const set = await rooted(problem, 100);
        if (set === undefined) return;
        const { demand, classes } = set.ground;
        const counts = classes.map((_, box) => (box === 0 ? 1 : 0));
        if (sheetsUsed(set.start, classes.length).reduce((a, b) => a + b, 0) < 6) return;
        tried++;
        const { pool: book, weights: worth } = set.request;
        expect(planEntropy({ book, demand, counts, worth })).toBeUndefined();
      }),
      { numRuns: 25 },
    );
    expect(tried).toBeGreaterThan(3);
  });
});
