import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { steelFactor, steelStandard } from './steel-standard.js';

// DIN 6935 (from memory): k = 0.65 + 0.5 log10(r / s) up to r / s = 5, then 1. The values are
// recomputed: log10(2) = 0.30103.
test.each([
  [0.5, 0.499485],
  [1, 0.65],
  [2, 0.800515],
  [5, 0.999485],
  [5.001, 1],
  [100, 1],
])('r / s = %d: k = %d', (ratio, k) => {
  for (const thickness of [0.2, 1, 6]) {
    expect(steelFactor(ratio * thickness, thickness)).toBeCloseTo(k, 5);
  }
});

// 10 ** -1.3 = 0.0501 is where the formula crosses 0.
test('where the formula would put the neutral line outside the metal, the inner face is taken', () => {
  expect(steelFactor(0.0501, 1)).toBeGreaterThanOrEqual(0);
  expect(steelFactor(0.0501, 1)).toBeLessThan(1e-3);
  expect(steelFactor(0.05, 1)).toBe(0);
  expect(steelFactor(0, 1)).toBe(0);
  const rule = steelStandard({ thickness: 1, insideRadius: 0.03 });
  expect(rule.allowance(90)).toBeCloseTo((Math.PI / 2) * 0.03, 12);
});

// By hand: r 0.6, s 0.3: k = 0.800515, so pi / 2 (0.6 + 0.800515 * 0.15) = 1.13109.
test('a square bend', () => {
  const rule = steelStandard({ thickness: 0.3, insideRadius: 0.6 });
  expect(rule.allowance(90)).toBeCloseTo(1.13109, 5);
  expect(rule.neutralDepth(0.6)).toBeCloseTo(0.120077, 6);
  expect(rule.neutralDepth(40)).toBe(0.15);
});

test('metal of no thickness is as long as its inner face', () => {
  const rule = steelStandard({ thickness: 0, insideRadius: 0 });
  expect(rule.allowance(120)).toBe(0);
  expect(rule.neutralDepth(0)).toBe(0);
  expect(rule.neutralDepth(3)).toBe(0);
});

test('the neutral line never leaves the inner half of the metal and moves out as bends open', () => {
  fc.assert(
    fc.property(between(0.1, 2), between(0, 20), between(0, 20), (thickness, a, b) => {
      const rule = steelStandard({ thickness, insideRadius: 0 });
      const [near, far] = [Math.min(a, b), Math.max(a, b)].map((r) => rule.neutralDepth(r));
      expect(near).toBeGreaterThanOrEqual(0);
      expect(far).toBeLessThanOrEqual(thickness / 2);
      expect(near).toBeLessThanOrEqual(far ?? Number.NaN);
    }),
  );
});

test.each([
  ['thickness', { thickness: -1, insideRadius: 1 }],
  ['insideRadius', { thickness: 1, insideRadius: Number.NaN }],
])('refuses a bad %s', (field, options) => {
  expect(() => steelStandard(options)).toThrow(
    expect.objectContaining({ name: 'BendError', code: 'out of range', field }),
  );
});

test('refuses an angle that no bend has, and a curve of negative radius', () => {
  const rule = steelStandard({ thickness: 1, insideRadius: 1 });
  expect(() => rule.allowance(-1)).toThrow('from 0 to 180');
  expect(() => rule.neutralDepth(-1)).toThrow('0 mm or more');
});
