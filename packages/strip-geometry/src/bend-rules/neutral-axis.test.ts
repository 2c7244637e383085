import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { BendError } from './bend-error.js';
import { neutralAxis } from './neutral-axis.js';
import { zeroThickness } from './zero-thickness.js';

/** Bend allowance. Any one unit of length, degrees bent through. */
function allowance(T: number, R: number, K: number, angle: number): number {
  return neutralAxis({ thickness: T, insideRadius: R, factor: K }).allowance(angle);
}

/** The factor whose part of each degree's allowance is 0.0078 T, as in the empirical form. */
const EMPIRICAL = (0.0078 * 180) / Math.PI;

// Machinery's Handbook, bending sheet metal, lengths of straight stock for 90 degrees
// (from memory): L = Y T + 1.57 R. Y is the quarter circle of radius K T, so K = 2 Y / pi.
describe('Machinery’s Handbook, constants for 90 degrees', () => {
  test.each([
    ['soft copper, soft brass', 0.55],
    ['half-hard copper, soft steel, aluminium', 0.64],
    ['hard copper, bronze, cold-rolled and spring steel', 0.71],
  ])('%s: %d T + 1.57 R', (_, constant) => {
    const factor = (2 * constant) / Math.PI;
    for (const [T, R] of [
      [0.0118, 1 / 64],
      [0.05, 0.032],
      [1, 0],
    ] as const) {
      // The handbook prints pi / 2 as 1.57.
      const rounding = (Math.PI / 2 - 1.57) * R;
      expect(allowance(T, R, factor, 90)).toBeCloseTo(constant * T + 1.57 * R + rounding, 12);
    }
  });
});

describe('worked examples', () => {
  // The first constant in print stands for pi / 180, by which the source multiplies R + K T.
  test.each([
    // NAVEDTRA 14119, Hull Maintenance Technician, fig. 13-49: 5.10, with theta as 1.57.
    ['Navy, 90', 1.57 / 90, 0.5, 3, 0.5, 90, 5.1, 2],
    // The same, fig. 13-50: 3.925, with theta as 3.14.
    ['Navy, 180', 3.14 / 180, 0.5, 1, 0.5, 180, 3.925, 12],
    // Web text: 24 gauge .024, R .020, K .33: .0438558984.
    ['24 gauge', 0.017453, 0.024, 0.02, 0.33, 90, 0.0438558984, 10],
    // AC 65-15A, chapter 5, first formula, 2 pi (R + T / 2) / 4 (from memory): .43275, printed .4327.
    ['airframe, neutral line in the middle', Math.PI / 180, 0.051, 0.25, 0.5, 90, 0.4327, 3],
    // A builder's log after AC 43.13-1B prints .413 from a chart; the formula gives .4123.
    ['builder’s log', Math.PI / 180, 0.025, 0.25, 0.5, 90, 0.4123, 4],
  ])('%s', (_, perDegree, T, R, K, angle, expected, digits) => {
    const asPrinted = (perDegree * 180) / Math.PI;
    expect(allowance(T, R, K, angle) * asPrinted).toBeCloseTo(expected, digits);
  });

  // The empirical form: degrees * (0.01743 R + 0.0078 T), where 0.01743 stands for pi / 180.
  test.each([
    // Sheet Metal Work Book, 6th ed., 90-degree bends: .085.
    ['Sheet Metal Work Book', 0.01743, 0.05, 0.032, 90, 0.085, 3],
    // AC 65-15A, chapter 5 (from memory): chart .428 for 90 degrees; .5707 for 120.
    ['airframe, 90', 0.01743, 0.051, 0.25, 90, 0.428, 4],
    ['airframe, 120', 0.01743, 0.051, 0.25, 120, 0.5707, 3],
    // Text after The Fabricator: R .250, T .250, 160 degrees: 1.010.
    ['a wide bend, 160', 0.017453, 0.25, 0.25, 160, 1.01, 3],
    // FAA-H-8083-31, chapter 4 (from memory): .279 for each bend of the U-channel.
    ['U-channel', 0.01743, 0.04, 0.16, 90, 0.279, 3],
  ])('%s', (_, perDegree, T, R, angle, expected, digits) => {
    const printedShort = (Math.PI / 180 - perDegree) * R * angle;
    expect(allowance(T, R, EMPIRICAL, angle) - printedShort).toBeCloseTo(expected, digits);
  });
});

test('the allowance is in proportion to the angle', () => {
  fc.assert(
    fc.property(between(0, 2), between(0, 5), between(0, 1), between(0, 90), (T, R, K, angle) => {
      expect(allowance(T, R, K, 2 * angle)).toBeCloseTo(2 * allowance(T, R, K, angle), 10);
    }),
  );
});

// DIN 6935 (from memory): k = 0.65 + 0.5 log10(r / s) of half the thickness, and 1 above
// r / s = 5. At 5 the formula gives 0.9995, hardly a step.
test('in a gentle curve the neutral line lies in the middle', () => {
  const rule = neutralAxis({ thickness: 0.3, insideRadius: 0.4, factor: 0.42 });
  expect(0.65 + 0.5 * Math.log10(5)).toBeCloseTo(0.9995, 4);
  expect(rule.neutralDepth(30)).toBe(0.15);
  expect(rule.neutralDepth(1.6)).toBe(0.15);
  expect(rule.neutralDepth(1.5)).toBeCloseTo(0.126, 12);
  expect(rule.neutralDepth(0)).toBeCloseTo(0.126, 12);
});

test('zero thickness takes up nothing', () => {
  const rule = zeroThickness();
  expect(rule.allowance(90)).toBe(0);
  expect(rule.neutralDepth(3)).toBe(0);
  expect([rule.thickness, rule.insideRadius]).toEqual([0, 0]);
});

test.each([
  ['thickness', { thickness: -0.1, insideRadius: 1, factor: 0.4 }],
  ['thickness', { thickness: Number.NaN, insideRadius: 1, factor: 0.4 }],
  ['insideRadius', { thickness: 0.1, insideRadius: -1, factor: 0.4 }],
  ['insideRadius', { thickness: 0.1, insideRadius: Number.POSITIVE_INFINITY, factor: 0.4 }],
  ['factor', { thickness: 0.1, insideRadius: 1, factor: -0.01 }],
  ['factor', { thickness: 0.1, insideRadius: 1, factor: 1.01 }],
  ['factor', { thickness: 0.1, insideRadius: 1, factor: Number.NaN }],
])('refuses a bad %s: %o', (field, options) => {
  expect(() => neutralAxis(options)).toThrow(
    expect.objectContaining({ name: 'BendError', code: 'out of range', field }),
  );
});

test.each([-1, 180.1, Number.NaN])('refuses a bend through %d degrees', (angle) => {
  for (const rule of [zeroThickness(), neutralAxis({ thickness: 1, insideRadius: 1, factor: 1 })]) {
    expect(() => rule.allowance(angle)).toThrow(BendError);
  }
});

test('refuses a curve of negative radius', () => {
  expect(() => zeroThickness().neutralDepth(-1)).toThrow(BendError);
});
