import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { StripError } from '../strip-error.js';
import { roundMarks } from './round-marks.js';

test('rounds to the nearest thirty-second of an inch', () => {
  // Ten sides of 7/8 in, with 7/8 = 28/32: already on the marks.
  const sides = [22.225, 44.45, 66.675];
  roundMarks(sides, 25.4 / 32).forEach((mark, index) => {
    expect(mark).toBeCloseTo(sides[index] ?? 0, 10);
  });
  expect(roundMarks([0.9, 1.1, 2.5], 1)).toEqual([1, 1, 3]);
});

test('every mark is within half a mark of the true distance, however many came before', () => {
  fc.assert(
    fc.property(fc.array(between(0, 5000)), between(0.01, 10), (positions, mark) => {
      const rounded = roundMarks(positions, mark);
      expect(rounded).toHaveLength(positions.length);
      rounded.forEach((found, index) => {
        const error = Math.abs(found - (positions[index] ?? Number.NaN));
        expect(error).toBeLessThanOrEqual((mark / 2) * (1 + 1e-9));
        expect(Math.abs(found / mark - Math.round(found / mark))).toBeLessThan(1e-9);
      });
    }),
  );
});

test('equal steps that fall between marks do not drift', () => {
  const positions = Array.from({ length: 100 }, (_, index) => (index + 1) * 10.4);
  expect(roundMarks(positions, 1).at(-1)).toBe(1040);
});

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a mark of %d', (mark) => {
  expect(() => roundMarks([1], mark)).toThrow(StripError);
});

test('refuses a distance that is not a number, by its place', () => {
  expect(() => roundMarks([1, Number.NaN], 1)).toThrow('Position 2');
});
