import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { decimateSheets } from './decimate-sheets.js';
import { evenPlan, problems } from './even-plan.test.support.js';

describe('settling sheets by decimation', () => {
  it('gives each box its sheets, settled or open, and leaves the plan as it was', async () => {
    const seen = { settled: 0, open: 0 };
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(6), fc.nat(1000), async (problem, left, seed) => {
        const even = await evenPlan(problem);
        if (even === undefined) return;
        const { plan, book, counts } = even;
        const before = [plan.numbers.amounts.slice(), plan.numbers.multipliers.slice()];
        const done = decimateSheets(plan, left, seededRandom(seed));
        expect([plan.numbers.amounts, plan.numbers.multipliers]).toEqual(before);
        const ofBox = counts.map(() => 0);
        for (const pattern of done.sheets) ofBox[book.sheets[plan.sheets[pattern]].box]++;
        for (const box of done.open) ofBox[box]++;
        counts.forEach((count, box) => {
          if (plan.boxes.includes(box)) expect(ofBox[box]).toBe(count);
          else expect(ofBox[box]).toBe(0);
        });
        expect(done.open.length).toBeGreaterThanOrEqual(
          Math.min(left, done.sheets.length + done.open.length),
        );
        seen.settled += done.sheets.length;
        seen.open += done.open.length;
        expect(decimateSheets(plan, left, seededRandom(seed))).toEqual(done);
      }),
      { numRuns: 25 },
    );
    expect(seen.settled).toBeGreaterThan(seen.open);
  });
});
