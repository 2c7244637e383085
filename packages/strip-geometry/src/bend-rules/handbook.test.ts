import { expect, test } from 'vitest';
import { type HandbookMetal, handbook, handbookMetals } from './handbook.js';

// Machinery's Handbook, bending sheet metal (from memory): .55, .64, .71 T + 1.57 R. A general
// CAD manual quotes the factors .35, .41 and .45 for the same three classes (2 Y / pi:
// .35014, .40744, .45200, recomputed).
test.each<[HandbookMetal, number, number, number]>([
  ['soft', 0.55, 0.35, 0.35014],
  ['half hard', 0.64, 0.41, 0.40744],
  ['hard', 0.71, 0.45, 0.452],
])('%s metal: %d T + 1.57 R, factor %d', (metal, constant, printed, exact) => {
  const rule = handbook({ thickness: 0.0118, insideRadius: 1 / 64, metal });
  expect(rule.allowance(90)).toBeCloseTo(constant * 0.0118 + 1.57 / 64, 14);
  const flat = handbook({ thickness: 1, insideRadius: 0, metal });
  const implied = flat.neutralDepth(0);
  expect(implied).toBeCloseTo(printed, 2);
  expect(implied).toBeCloseTo(exact, 5);
  // The factor says the same as the constant.
  expect((Math.PI / 2) * implied).toBeCloseTo(flat.allowance(90), 12);
});

// The same source: other angles take the square bend's length in proportion.
test('a bend of 60 degrees takes two thirds of a square one', () => {
  const rule = handbook({ thickness: 0.3, insideRadius: 0.4, metal: 'half hard' });
  expect(rule.allowance(60)).toBeCloseTo((2 / 3) * rule.allowance(90), 14);
  expect(rule.allowance(0)).toBe(0);
});

test('a gentle curve has its neutral line in the middle', () => {
  for (const metal of handbookMetals) {
    expect(handbook({ thickness: 0.3, insideRadius: 0.4, metal }).neutralDepth(20)).toBe(0.15);
  }
});

test.each([
  ['thickness', { thickness: -1, insideRadius: 1, metal: 'soft' as const }],
  ['insideRadius', { thickness: 1, insideRadius: Number.NaN, metal: 'soft' as const }],
  ['metal', { thickness: 1, insideRadius: 1, metal: 'brittle' as HandbookMetal }],
])('refuses a bad %s', (field, options) => {
  expect(() => handbook(options)).toThrow(
    expect.objectContaining({ name: 'BendError', code: 'out of range', field }),
  );
});

test('refuses an angle that no bend has', () => {
  const rule = handbook({ thickness: 1, insideRadius: 1, metal: 'soft' });
  expect(() => rule.allowance(Number.NaN)).toThrow('from 0 to 180');
});
