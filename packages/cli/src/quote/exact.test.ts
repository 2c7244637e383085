import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Exact, exactly, printExact, readExact, roundedHalfUp, times } from './exact.js';

const value = (text: string, isPercent = false): Exact => {
  const read = readExact(text, isPercent);
  if (!read.ok) throw new Error(read.complaint.code);
  return read.value;
};

describe('numbers without rounding', () => {
  it('are read as written', () => {
    // 0.1 is no binary fraction, so that a tenth three times over tells.
    expect(times(value('0.1'), exactly(3))).toEqual({ over: 3n, under: 10n });
    expect(roundedHalfUp(times(value('1/3'), exactly(3)))).toBe(1);
    expect(value('12.5 %', true)).toEqual({ over: 125n, under: 10n });
    expect(printExact(value('0.750'))).toBe('0.75');
    const codes = ['-1', '1,5', '', '1e3', '0.1234567', '1/0', '5 %', '1000001'].map((text) => {
      const read = readExact(text);
      return read.ok ? 'read' : read.complaint.code;
    });
    expect(codes).toEqual([
      'must not be negative',
      ...['not a number', 'not a number', 'not a number', 'not a number'],
      ...['zero denominator', 'not a number', 'too large'],
    ]);
  });

  it.each([
    [5n, 2n, 3],
    [49n, 20n, 2],
    [-5n, 2n, -2],
    [-51n, 20n, -3],
    [0n, 7n, 0],
    [199_999n, 200_000n, 1],
  ])('%s / %s rounds to %s, a half up', (over, under, rounded) => {
    expect(roundedHalfUp({ over, under })).toBe(rounded);
  });

  it('never round by more than half, and by half only upward', () => {
    fc.assert(
      fc.property(fc.bigInt(-(10n ** 12n), 10n ** 12n), fc.bigInt(1n, 10n ** 6n), (over, under) => {
        const off = 2n * (BigInt(roundedHalfUp({ over, under })) * under - over);
        expect(off > -under && off <= under).toBe(true);
      }),
    );
  });
});
