import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rackRate } from './rack-rate.js';

describe('the rate of offcuts', () => {
  test.each([
    [0, { coinsPerMillion: 0 }],
    [297.5, { coinsPerMillion: 297 }],
    [100, { coinsPerMillion: 100 }],
    [99.9, { coinsPerMillion: 999, millions: 10 }],
    [0.0297, { coinsPerMillion: 297, millions: 10_000 }],
    // Next to nothing is worth nothing.
    [1e-9, { coinsPerMillion: 0, millions: 1_000_000 }],
  ])('of %d coins for a million square marks', (coins, rate) => {
    expect(rackRate(coins)).toEqual(rate);
  });

  test('is no more than it was, and no more than a hundredth less', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 1e8, noNaN: true }), (coins) => {
        const { coinsPerMillion, millions = 1 } = rackRate(coins);
        expect(Number.isInteger(coinsPerMillion)).toBe(true);
        const off = coins - coinsPerMillion / millions;
        expect(off).toBeGreaterThan(-1e-9 * coins);
        expect(off).toBeLessThan(coins / 100);
      }),
    );
  });
});
