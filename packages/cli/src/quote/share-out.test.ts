import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareOut } from './share-out.js';

describe('sharing a whole number out', () => {
  it('adds up exactly, and gives each its quota, rounded down or up', () => {
    fc.assert(
      fc.property(
        fc.nat(1_000_000_000),
        fc.array(fc.bigInt(0n, 10n ** 15n), { minLength: 1, maxLength: 40 }),
        (whole, weights) => {
          const shares = shareOut(whole, weights);
          expect(shares.reduce((sum, share) => sum + share, 0)).toBe(whole);
          const all = weights.reduce((sum, weight) => sum + weight, 0n);
          if (all === 0n) return;
          weights.forEach((weight, index) => {
            const off = BigInt(shares[index] ?? -1) * all - BigInt(whole) * weight;
            expect(off > -all && off < all).toBe(true);
          });
        },
      ),
    );
  });

  it('gives what is left to the largest remainders', () => {
    // Quotas 2.5, 2.5, 5.1 of 10.1: worked by hand.
    expect(shareOut(10, [50n, 50n, 102n])).toEqual([3, 2, 5]);
    expect(shareOut(7, [0n, 0n])).toEqual([7, 0]);
  });
});
