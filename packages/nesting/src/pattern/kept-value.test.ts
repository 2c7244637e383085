import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { KeepRule } from '../problem.js';
import { isKept, keptValue } from './kept-value.js';

const rule: KeepRule = { leastLength: 300, leastWidth: 100, coinsPerMillion: 900, trouble: 20 };

describe('keptValue', () => {
  it.each([
    // 120000 * 0.0009 = 108, less 20.
    [400, 300, true, 88],
    [300, 400, true, 88],
    // 301 * 101 = 30401: 27.36, down to 27, less 20.
    [301, 101, true, 7],
    [299, 299, false, 0],
    [5000, 99, false, 0],
  ])('of %d x %d', (length, width, keep, value) => {
    expect(isKept(length, width, rule)).toBe(keep);
    expect(keptValue(length, width, rule)).toBe(value);
  });

  it('is never below 0, and 0 without a rule', () => {
    expect(keptValue(300, 100, { ...rule, trouble: 28 })).toBe(0);
    expect(keptValue(300, 100, undefined)).toBe(0);
  });

  const side = fc.integer({ min: 1, max: 200_000 });
  const any = fc.record({
    leastLength: side,
    leastWidth: side,
    coinsPerMillion: fc.integer({ min: 0, max: 100_000_000 }),
    trouble: fc.integer({ min: 0, max: 1000 }),
  });

  it('is exact to the last coin, however large', () => {
    fc.assert(
      fc.property(side, side, any, (length, width, rule) => {
        fc.pre(isKept(length, width, rule));
        const coins =
          (BigInt(length) * BigInt(width) * BigInt(rule.coinsPerMillion)) / 1_000_000n -
          BigInt(rule.trouble);
        expect(BigInt(keptValue(length, width, rule))).toBe(coins < 0n ? 0n : coins);
      }),
    );
  });

  it('may count by many millions of ticks, as exactly', () => {
    // 120000 * 0.0009 = 108 coins, and 20 less; by 10 and by 7 millions.
    expect(keptValue(400, 300, { ...rule, coinsPerMillion: 9000, millions: 10 })).toBe(88);
    expect(keptValue(400, 300, { ...rule, coinsPerMillion: 900, millions: 7, trouble: 0 })).toBe(
      15,
    );
    const fine = fc.record({
      leastLength: fc.constant(1),
      leastWidth: fc.constant(1),
      coinsPerMillion: fc.integer({ min: 0, max: 200_000 }),
      millions: fc.integer({ min: 1, max: 1_000_000 }),
    });
    fc.assert(
      fc.property(side, side, fine, (length, width, rule) => {
        const ticks = 1_000_000n * BigInt(rule.millions);
        const coins = (BigInt(length) * BigInt(width) * BigInt(rule.coinsPerMillion)) / ticks;
        expect(BigInt(keptValue(length, width, rule))).toBe(coins);
      }),
    );
  });

  it('gives one remnant at least what two halves of it would bring', () => {
    fc.assert(
      fc.property(side, side, side, any, (a, b, width, rule) => {
        expect(keptValue(a + b, width, rule)).toBeGreaterThanOrEqual(
          keptValue(a, width, rule) + keptValue(b, width, rule),
        );
      }),
    );
  });
});
