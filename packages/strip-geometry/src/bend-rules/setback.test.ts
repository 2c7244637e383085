import { describe, expect, test } from 'vitest';
import { neutralAxis } from './neutral-axis.js';
import { setback } from './setback.js';

// AC 43.13-1B (1998), table 4-7, setback K chart, K = tan(A / 2). The chart cuts digits off
// rather than rounding. Left out are its misprints at 86, 159 and 176 degrees.
test.each([
  [1, '.0087'],
  [5, '.0436'],
  [10, '.0874'],
  [15, '.1316'],
  [20, '.1763'],
  [25, '.2216'],
  [30, '.2679'],
  [36, '.3249'],
  [40, '.3639'],
  [45, '.4142'],
  [50, '.4663'],
  [55, '.5205'],
  [60, '.5773'],
  [65, '.6370'],
  [70, '.7002'],
  [72, '.7265'],
  [75, '.7673'],
  [80, '.8391'],
  [85, '.9163'],
  [90, '1.000'],
  [95, '1.091'],
  [100, '1.191'],
  [105, '1.303'],
  [110, '1.428'],
  [120, '1.732'],
  [125, '1.921'],
  [130, '2.144'],
  [135, '2.414'],
  [140, '2.747'],
  [150, '3.732'],
  [160, '5.671'],
  [170, '11.43'],
  [179, '114.59'],
])('airframe K chart: %i degrees, %s', (angle, printed) => {
  const lastPlace = 10 ** -(printed.split('.')[1]?.length ?? 0);
  const chart = Number(printed);
  // For R + T = 1, however it is shared.
  expect(Math.abs(setback(angle, 0.7, 0.3) - chart)).toBeLessThanOrEqual(lastPlace);
});

test('a bend of 180 degrees, printed as "Inf." in the chart, is refused', () => {
  expect(() => setback(180, 1, 1)).toThrow(
    expect.objectContaining({ name: 'BendError', code: 'folded flat', field: 'angle' }),
  );
});

test.each([
  ['angle', -1, 1, 1],
  ['angle', Number.NaN, 1, 1],
  ['angle', 200, 1, 1],
  ['insideRadius', 90, -1, 1],
  ['thickness', 90, 1, -1],
  ['thickness', 90, 1, Number.NaN],
])('refuses a bad %s', (field, angle, insideRadius, thickness) => {
  expect(() => setback(angle, insideRadius, thickness)).toThrow(
    expect.objectContaining({ name: 'BendError', code: 'out of range', field }),
  );
});

// Bend deduction, 2 * setback - allowance. Sheet Metal Work Book, 6th ed., a problem set without
// answers: inputs from the book, answers recomputed with .017453 and .0078 for each degree.
describe('bend deductions', () => {
  test.each<[number, number, number, number, number?]>([
    [3 / 32, 0.063, 120, 0.2877],
    [3 / 32, 0.063, 90, 0.122],
    [3 / 32, 0.063, 45, 0.0341],
    [1 / 8, 0.075, 120, 0.3608],
    [1 / 8, 0.075, 90, 0.151],
    [1 / 8, 0.075, 45, 0.0412],
    [1 / 16, 0.048, 120, 0.207],
    [1 / 16, 0.048, 90, 0.0891],
    [1 / 16, 0.048, 60, 0.0397],
    [1 / 16, 0.048, 95, 0.102],
    [1 / 16, 0.048, 45, 0.0256],
    [1 / 16, 0.048, 15, 0.0071],
    // The book's own worked part: .079.
    [0.032, 0.05, 90, 0.079, 3],
    // Text after The Fabricator: R .250, T .250, 160 degrees: setback 2.836, deduction 4.661.
    [0.25, 0.25, 160, 4.661, 3],
  ])('R %d, T %d, %d degrees', (R, T, angle, deduction, digits = 4) => {
    const rule = neutralAxis({ thickness: T, insideRadius: R, factor: 0.0078 / 0.017453 });
    expect(2 * setback(angle, R, T) - rule.allowance(angle)).toBeCloseTo(deduction, digits);
  });
});
