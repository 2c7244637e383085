import { describe, expect, test } from 'vitest';
import { parseSize } from './parse-size.js';
import type { Unit } from './unit.js';

describe('a size is read', () => {
  test.each<[text: string, units: Unit, length: number, width: number]>([
    ['20 x 28 in', 'mm', 508, 711.2],
    ['20 in x 28 in', 'mm', 508, 711.2],
    ['20 in x 28', 'mm', 508, 711.2],
    ['508 x 711 mm', 'in', 508, 711],
    ['508x711mm', 'in', 508, 711],
    ['20 1/4 x 28', 'in', 514.35, 711.2],
    ['20 1/4 X 28"', 'in', 514.35, 711.2],
    ['20 \u00d7 28', 'in', 508, 711.2],
    ['50.8 cm x 711 mm', 'in', 508, 711],
  ])('%j in a shop that works in %s', (text, units, length, width) => {
    const read = parseSize(text, units);
    const value = { length: expect.closeTo(length, 9), width: expect.closeTo(width, 9) };
    expect(read).toEqual({ ok: true, value });
  });
});

describe('what is no size is refused', () => {
  test.each([
    ['20', 'not a size'],
    ['20 x', 'not a size'],
    ['x 20', 'not a size'],
    ['20 x 28 x 1', 'not a size'],
    ['20 by 28', 'not a size'],
    ['0 x 28', 'must be above zero'],
    ['20 x 0 in', 'must be above zero'],
    ['20 x -28', 'must not be negative'],
    ['20 x 1/0', 'zero denominator'],
    ['20 x 28 ft', 'unknown unit'],
    ['20 x 99999999', 'too large'],
  ])('%j: %s', (text, code) => {
    expect(parseSize(text, 'in')).toMatchObject({ ok: false, complaint: { code } });
  });
});
