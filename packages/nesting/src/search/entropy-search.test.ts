import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { EntropySearch } from './entropy-search.js';
import { evenPlan, problems } from './even-plan.test.support.js';

describe('searching sheets by entropy', () => {
  it('gives other whole sheets each time, as many of each box as there are', async () => {
    const seen = { times: 0, room: 0 };
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(1000), async (problem, seed) => {
        const even = await evenPlan(problem);
        if (even === undefined) return;
        const { ground, book, counts, worth, plan } = even;
        const search = EntropySearch.open(ground, book, counts, worth);
        const random = seededRandom(seed);
        const keys = new Set<string>();
        for (let time = 0; time < 3; time++) {
          const found = await search?.next(random);
          if (found === undefined) break;
          const ofBox = counts.map(() => 0);
          found.numbers.forEach((count, sheet) => {
            ofBox[book.sheets[sheet].box] += count;
          });
          counts.forEach((count, box) => {
            expect(ofBox[box]).toBe(plan.boxes.includes(box) ? count : 0);
          });
          expect(keys.has(found.numbers.join())).toBe(false);
          keys.add(found.numbers.join());
          seen.times++;
          if (found.room >= 0) seen.room++;
        }
      }),
      { numRuns: 15 },
    );
    expect(seen.times).toBeGreaterThan(10);
    expect(seen.room).toBeGreaterThan(5);
  });
});
