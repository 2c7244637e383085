import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength, parsePositiveLength } from './parse-length.js';
import type { Unit } from './unit.js';

describe('a length is read', () => {
  // 25.4 mm to the inch exactly: ISO 80000-3 and the 1959 agreement on the international yard.
  test.each<[text: string, units: Unit, millimetres: number]>([
    ['1 5/8', 'in', 41.275],
    ['1-5/8', 'in', 41.275],
    ['5/8', 'in', 15.875],
    ['1.625', 'in', 41.275],
    ['1.625 in', 'mm', 41.275],
    ['1.625in', 'mm', 41.275],
    ['1 5/8"', 'mm', 41.275],
    ['1 5/8 inches', 'mm', 41.275],
    ['41.3 mm', 'in', 41.3],
    ['41.3MM', 'in', 41.3],
    ['4.13 cm', 'in', 41.3],
    ['41.3', 'mm', 41.3],
    ['.5', 'in', 12.7],
    ['17.', 'in', 431.8],
    [' 1  5 / 8  in ', 'mm', 41.275],
    ['0', 'in', 0],
    ['100000', 'mm', 100_000],
  ])('%j in a shop that works in %s', (text, units, millimetres) => {
    const read = parseLength(text, units);
    expect(read).toEqual({ ok: true, value: expect.closeTo(millimetres, 9) });
  });
});

describe('what is no length is refused', () => {
  test.each([
    ['', 'not a length'],
    ['NaN', 'not a length'],
    ['Infinity', 'not a length'],
    ['wide', 'not a length'],
    ['1/0', 'zero denominator'],
    ['1 1/0 in', 'zero denominator'],
    ['1 5/8 5', 'not a length'],
    ['1 5/8 in in', 'not a length'],
    ['1.2.3', 'not a length'],
    ['1,5', 'not a length'],
    ['1e3', 'not a length'],
    ['0x10', 'not a length'],
    ['5/', 'not a length'],
    ['-1', 'must not be negative'],
    ['- 1/2', 'must not be negative'],
    ['3 ft', 'unknown unit'],
    ["3'", 'unknown unit'],
    ['100001', 'too large'],
    ['9'.repeat(400), 'too large'],
  ])('%j: %s', (text, code) => {
    const read = parseLength(text, 'mm');
    expect(read).toMatchObject({ ok: false, complaint: { code } });
  });

  test('0 where a length must be above 0', () => {
    const code = 'must be above zero';
    expect(parsePositiveLength('0', 'in')).toMatchObject({ ok: false, complaint: { code } });
    expect(parsePositiveLength('0/8', 'in')).toMatchObject({ ok: false, complaint: { code } });
    expect(parsePositiveLength('1/8', 'in')).toMatchObject({ ok: true });
  });

  test('any text is read as a length of 0 to 100 m, or refused, but never thrown at', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const read = parseLength(text, 'in');
        if (read.ok) {
          expect(read.value).toBeGreaterThanOrEqual(0);
          expect(read.value).toBeLessThanOrEqual(100_000);
        } else {
          expect(read.complaint.code).toBeTypeOf('string');
        }
      }),
    );
  });
});
