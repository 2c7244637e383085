import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastOfEach } from './least-of-each.js';

const patterns = fc.array(
  fc.record({
    cost: fc.integer({ min: 0, max: 20 }),
    amount: fc.constantFrom(0, 0, 0, 1.5),
    group: fc.nat(3),
  }),
  { minLength: 1, maxLength: 40 },
);

describe('leastOfEach', () => {
  it('takes what is used and what costs least, not too many of one group', () => {
    const seen = { full: 0, leftOut: 0 };
    fc.assert(
      fc.property(patterns, fc.integer({ min: 1, max: 30 }), (all, most) => {
        const used = all.filter(({ amount }) => amount > 0).length;
        const costs = all.map(({ cost }) => cost);
        const amounts = all.map(({ amount }) => amount);
        const chosen = leastOfEach(costs, amounts, most, 0.25, (index) => all[index].group);
        expect(new Set(chosen).size).toBe(chosen.length);
        expect(chosen.length).toBeLessThanOrEqual(most);
        expect(chosen.filter((index) => amounts[index] > 0)).toHaveLength(Math.min(used, most));
        for (let group = 0; group < 4; group++) {
          const own = chosen.filter((index) => all[index].group === group);
          const usedOfIt = own.filter((index) => amounts[index] > 0).length;
          expect(own.length).toBeLessThanOrEqual(Math.max(usedOfIt, Math.ceil(0.25 * most)));
          // Nothing of the group that costs less was left out for it.
          const dearest = Math.max(
            -1,
            ...own.filter((i) => amounts[i] === 0).map((index) => costs[index]),
          );
          const leftOut = all.filter(
            (pattern, index) =>
              pattern.group === group &&
              pattern.amount === 0 &&
              pattern.cost < dearest &&
              !chosen.includes(index),
          );
          expect(leftOut).toEqual([]);
        }
        if (chosen.length === most) seen.full++;
        if (chosen.length < Math.min(most, all.length)) seen.leftOut++;
      }),
    );
    expect(seen.full).toBeGreaterThan(5);
    expect(seen.leftOut).toBeGreaterThan(5);
  });
});
