import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandBook } from '../master/band-book.js';
import { seededRandom } from '../random.js';
import { BandEntropy } from './band-entropy.js';
import { evenPlan, problems } from './even-plan.test.support.js';
import type { PlanEntropy } from './plan-entropy.js';

const slotsOfPlan = ({ sheets, slots, numbers }: PlanEntropy, book: BandBook): Float64Array => {
  const counts = new Float64Array(slots.length);
  sheets.forEach((sheet, column) => {
    for (const [slot, copies] of book.sheets[sheet].slots) {
      counts[slots.indexOf(slot)] += copies * numbers.amounts[column];
    }
  });
  return counts;
};

describe('the entropy of bands', () => {
  it('is concave in the slots: nowhere above what its slope says of it', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(1000), async (problem, seed) => {
        const even = await evenPlan(problem);
        if (even === undefined) return;
        const { plan, book, demand } = even;
        const bands = new BandEntropy(book, demand, plan);
        const center = slotsOfPlan(plan, book);
        const here = bands.at(center);
        const random = seededRandom(seed);
        const there = center.map((count) =>
          count > 1e-6 ? count * (0.8 + 0.4 * random()) : count,
        );
        const other = bands.at(there);
        if (here === undefined || other === undefined) return;
        const step = there.map((count, slot) => count - center[slot]);
        const first = step.reduce((sum, count, slot) => sum + here.slope[slot] * count, 0);
        const size = Math.abs(first) + Math.abs(other.entropy) + 1;
        expect((other.entropy - here.entropy - first) / size).toBeLessThan(1e-3);
        compared++;
      }),
      { numRuns: 25 },
    );
    expect(compared).toBeGreaterThan(8);
  });

  it('bends down every way, and not at all with slots that there are none of', async () => {
    const seen = { bent: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(1000), async (problem, which) => {
        const even = await evenPlan(problem);
        if (even === undefined || even.plan.slots.length < 2) return;
        const { plan, book, demand } = even;
        const center = slotsOfPlan(plan, book);
        const size = center.length;
        center[which % size] = 0;
        const model = new BandEntropy(book, demand, plan).at(center);
        if (model === undefined) return;
        const { curvature } = model;
        for (let slot = 0; slot < size; slot++) {
          expect(curvature[slot * size + slot]).toBeGreaterThanOrEqual(0);
          if (curvature[slot * size + slot] > 0) seen.bent++;
          for (let other = 0; other < size; other++) {
            const [one, two] = [curvature[slot * size + other], curvature[other * size + slot]];
            expect(Math.abs(one - two)).toBeLessThan(1e-6 * (1 + Math.abs(one)));
            if (other !== which % size) continue;
            expect(one).toBe(0);
            seen.none++;
          }
        }
      }),
      { numRuns: 25 },
    );
    expect(seen.bent).toBeGreaterThan(20);
    expect(seen.none).toBeGreaterThan(20);
  });
});
