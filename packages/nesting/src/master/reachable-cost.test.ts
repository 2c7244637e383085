import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ReachableCosts } from './reachable-cost.js';

const prices = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 4 });

function sums(of: readonly number[], most: number): readonly number[] {
  const reached = new Set([0]);
  for (const sum of reached) {
    for (const price of of) if (sum + price <= most) reached.add(sum + price);
  }
  return [...reached].sort((a, b) => a - b);
}

describe('ReachableCosts', () => {
  it('rounds up and down to sums of prices', () => {
    fc.assert(
      fc.property(prices, fc.nat(200), (some, cost) => {
        const reach = new ReachableCosts(some, 300);
        const all = sums(some, 300);
        if (some.some((price) => price > 0)) {
          expect(reach.atLeast(cost)).toBe(all.find((sum) => sum >= cost));
        }
        expect(reach.below(cost)).toBe([...all].reverse().find((sum) => sum < cost) ?? -1);
      }),
    );
  });

  it('knows that nothing above 0 can be paid where all is free', () => {
    const reach = new ReachableCosts([0, 0], 100);
    expect(reach.atLeast(0)).toBe(0);
    expect(reach.atLeast(1)).toBe(Number.POSITIVE_INFINITY);
    expect(reach.below(1)).toBe(0);
    expect(reach.below(0)).toBe(-1);
  });

  it('falls back on the common divisor beyond its table', () => {
    const reach = new ReachableCosts([600, 1500], 1e12);
    expect(reach.atLeast(100)).toBe(300);
    expect(reach.below(301)).toBe(300);
  });
});
