import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength } from './parse-length.js';
import { printAsTyped, printExactDecimal, printExactly, unitsAsTyped } from './print-exact.js';
import { roundMillimetres } from './ticks.js';
import { MILLIMETRES, SHOP_UNITS } from './unit.js';

// At 100 m itself, the longest that is read, inches rounded to nine figures may lie beyond it.
const lengths = fc.integer({ min: 10_000, max: 99_999_999_999 }).map((whole) => whole / 1_000_000);
const inches = fc
  .tuple(fc.nat({ max: 200 }), fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128), fc.nat({ max: 127 }))
  .map(([whole, under, over]) => ({ whole, under, over: over % under }))
  .filter(({ whole, over }) => whole + over > 0);

describe('a length', () => {
  test('is what reading its exact figures gives', () => {
    fc.assert(
      fc.property(lengths, fc.constantFrom(...SHOP_UNITS), (length, units) => {
        for (const print of [printExactly, printExactDecimal]) {
          const read = parseLength(`${print(length, units)} ${units}`, units);
          if (!read.ok) throw new Error(print(length, units));
          expect(roundMillimetres(read.value)).toBe(length);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('typed as a fraction of an inch is printed as that fraction in lowest terms', () => {
    fc.assert(
      fc.property(inches, ({ whole, under, over }) => {
        const length = roundMillimetres((whole + over / under) * MILLIMETRES.in);
        const text = printAsTyped(length, 'in');
        const [, units = '0', top = '0', bottom = '1'] =
          /^(?:(\d+)(?:$| ))?(?:(\d+)\/(\d+))?$/.exec(text) ?? [];
        expect(text).not.toBe('');
        expect(Number(units)).toBe(whole);
        expect(Number(top) * under).toBe(over * Number(bottom));
        if (top !== '0') expect(Number(top) % 2).toBe(1);
      }),
    );
  });

  test.each<[millimetres: number, units: 'in' | 'mm', typed: string, exact: string]>([
    [444.5, 'in', '17 1/2', '17 1/2'],
    [432.196875, 'in', '17 1/64', '17 1/64'],
    [439.42, 'in', '17.3', '17.3'],
    [444.5, 'mm', '444.5', '444.5'],
    [700, 'mm', '700', '700'],
    [300, 'in', '11.811', '11.81102362'],
    [432.196875, 'mm', '432.197', '432.196875'],
  ])('of %d mm in %s is %s, exactly %s', (millimetres, units, typed, exact) => {
    expect(printAsTyped(millimetres, units)).toBe(typed);
    expect(printExactly(millimetres, units)).toBe(exact);
  });

  test.each<[lengths: number[], wanted: 'in' | 'mm', units: 'in' | 'mm']>([
    [[300, 90], 'in', 'mm'],
    [[444.5, 152.4], 'in', 'in'],
    [[444.5, 152.4], 'mm', 'mm'],
    [[432.196875, 152.4], 'mm', 'in'],
    [[432.196875, 90], 'mm', 'mm'],
  ])('%j wanted in %s were typed in %s', (all, wanted, units) => {
    expect(unitsAsTyped(all, wanted)).toBe(units);
  });
});
