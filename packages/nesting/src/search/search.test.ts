import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { deadlineIn } from '../deadline.js';
import { EVERY_KIND } from '../kinds.test.support.js';
import { leastCost, loadHighs } from '../least-cost.test.support.js';
import { misfits } from '../misfits.js';
import { SMALL } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { search } from './search.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** Problems of each kind, and seconds for each search: some are stopped. */
const OF_EACH = 12;
const SECONDS = 0.2;

/** A search is of one metal. */
const kinds = EVERY_KIND.filter(({ name }) => !/metals|everything/.test(name));

// Small problems are enumerated before the search comes to much of what large ones need.
describe.each(kinds)('a search without enumeration, with $name', ({ problems }) => {
  it('has a bound that no plan falls short of', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(problems(SMALL), async (problem) => {
        const least = leastCost(highs, problem);
        const best = least === 'cannot be cut' ? Number.POSITIVE_INFINITY : least;
        const { ground, rules, start } = groundOf(problem);
        // What fits nowhere is found before any search.
        fc.pre(misfits(problem, ground.classes, rules) === undefined);
        const { cost, bound } = await search({
          ground: {
            ...ground,
            everyPattern: () => undefined,
            deadline: deadlineIn(SECONDS, Date.now),
          },
          known: start,
          brief: false,
          seed: 1,
        });
        expect(bound).toBeLessThanOrEqual(best);
        expect(cost).toBeGreaterThanOrEqual(best);
        if (bound === cost) expect(cost).toBe(best);
      }),
      { numRuns: OF_EACH },
    );
  });
});
