import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amountOf, coinsOf, parsePrice, printMoney } from './money.js';

describe('prices', () => {
  test.each([
    ['7', 700],
    ['7.4', 740],
    ['7.40', 740],
    ['0.07', 7],
    ['0', 0],
    // 1.15 * 100 is 114.99999999999999 in binary.
    ['1.15', 115],
    ['1000000', 100_000_000],
  ])('%s is %d coins', (text, coins) => {
    expect(parsePrice(text)).toEqual({ ok: true, value: coins });
  });

  test.each([
    ['7.405', 'not a price'],
    ['7.400', 'not a price'],
    ['$7.40', 'not a price'],
    ['1,200', 'not a price'],
    ['1e2', 'not a price'],
    ['.5', 'not a price'],
    ['free', 'not a price'],
    ['-3', 'must not be negative'],
    ['1000000.01', 'too large'],
  ])('%s: %s', (text, code) => {
    expect(parsePrice(text)).toMatchObject({ ok: false, complaint: { code } });
  });

  test('are printed with the sign where the sign belongs', () => {
    expect(printMoney(740, '$')).toBe('$7.40');
    expect(printMoney(740, '\u20ac')).toBe('\u20ac7.40');
    expect(printMoney(740, 'kr')).toBe('7.40 kr');
    expect(printMoney(5, '')).toBe('0.05');
  });

  test('coins survive being decimals in a file', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e12 }), (coins) => {
        const read: unknown = JSON.parse(JSON.stringify(amountOf(coins)));
        expect(coinsOf(Number(read))).toBe(coins);
      }),
    );
  });

  test('parts of a coin are no amount', () => {
    expect(coinsOf(7.405)).toBeUndefined();
    expect(coinsOf(7.1)).toBe(710);
  });
});
