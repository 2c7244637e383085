import { expect, test } from 'vitest';
import { printArea, printWeight } from './print-weight.js';

// NIST Handbook 44, Appendix C: 1 avoirdupois pound is 453.59237 g, 1 ounce 28.349523125 g.
test.each([
  [28.349523125, '28 g', '1.0 oz'],
  [453.59237, '454 g', '1.00 lb'],
  [999.4, '999 g', '2.20 lb'],
  [1360.8, '1.36 kg', '3.00 lb'],
  [0, '0 g', '0.0 oz'],
])('%d g', (grams, metric, inches) => {
  expect(printWeight(grams, 'mm')).toBe(metric);
  expect(printWeight(grams, 'in')).toBe(inches);
});

test('areas', () => {
  expect(printArea(645.16 * 24, 'in')).toBe('24 sq in');
  expect(printArea(52_900, 'mm')).toBe('529 sq cm');
});
