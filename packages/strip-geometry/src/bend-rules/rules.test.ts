import { describe, expect, test } from 'vitest';
import { airframe } from './airframe.js';
import { BendError } from './bend-error.js';
import { neutralAxis } from './neutral-axis.js';
import { type BendRuleSizes, bendRuleNamed, bendRules } from './rules.js';
import { setback } from './setback.js';

const everything = {
  thickness: 0.3,
  insideRadius: 0.4,
  factor: 0.44,
  print: 'Navy',
  metal: 'hard',
} as const satisfies Required<BendRuleSizes>;

test('every rule is made by its name and carries it', () => {
  expect(new Set(bendRules.map(({ name }) => name)).size).toBe(bendRules.length);
  for (const kind of bendRules) {
    expect(bendRuleNamed(kind.name)).toBe(kind);
    expect(kind.make(everything).name).toBe(kind.name);
    expect(kind.source).not.toBe('');
  }
  expect(bendRuleNamed('guess')).toBeUndefined();
});

describe.each(bendRules)('$name', (kind) => {
  test('needs the sizes it says, and no others', () => {
    const required = kind.fields.filter((field) => field.required).map(({ name }) => name);
    const just = Object.fromEntries(required.map((name) => [name, everything[name]]));
    expect(kind.make(just).allowance(90)).toBeGreaterThanOrEqual(0);
    for (const left of required) {
      const { [left]: _, ...rest } = just;
      expect(() => kind.make(rest)).toThrow(
        expect.objectContaining({ name: 'BendError', code: 'missing', field: left }),
      );
    }
  });

  test('every choice it offers is taken', () => {
    for (const { name, choices } of kind.fields) {
      for (const choice of choices ?? []) {
        expect(() => kind.make({ ...everything, [name]: choice })).not.toThrow(BendError);
      }
    }
  });

  test('a wider bend takes up more, and nothing takes up nothing', () => {
    const rule = kind.make(everything);
    expect(rule.allowance(0)).toBe(0);
    expect(rule.allowance(120)).toBeGreaterThanOrEqual(rule.allowance(60));
  });
});

test('optional sizes reach the rule', () => {
  const navy = airframe({ thickness: 0.3, insideRadius: 0.4, print: 'Navy' });
  expect(bendRuleNamed('airframe')?.make(everything).allowance(90)).toBe(navy.allowance(90));
});

// Sheet Metal Work Book, 6th ed., a problem set without answers: two outside dimensions and one
// bend. Inputs from the book; flat lengths recomputed with .017453 and .0078 for each degree,
// flat = first - deduction + second.
describe('a problem set', () => {
  test.each([
    [3 / 32, 0.063, 120, 2.125, 1.75, 3.587],
    [3 / 32, 0.063, 90, 1.75, 1.875, 3.503],
    [3 / 32, 0.063, 45, 2, 2, 3.966],
    [1 / 8, 0.075, 120, 2.125, 1.75, 3.514],
    [1 / 8, 0.075, 90, 1.75, 1.875, 3.474],
    [1 / 8, 0.075, 45, 2, 2, 3.959],
    [1 / 16, 0.048, 120, 2.125, 1.75, 3.668],
    [1 / 16, 0.048, 90, 1.75, 1.875, 3.536],
    [1 / 16, 0.048, 45, 2, 2, 3.974],
    [1 / 16, 0.048, 60, 1.525, 1.712, 3.197],
    [1 / 16, 0.048, 95, 1.625, 3, 4.523],
    [1 / 16, 0.048, 15, 0.75, 1, 1.743],
  ])('R %d, T %d, %d degrees, %d and %d: flat %d', (R, T, angle, first, second, flat) => {
    const rule = neutralAxis({ thickness: T, insideRadius: R, factor: 0.0078 / 0.017453 });
    expect(first + second - 2 * setback(angle, R, T) + rule.allowance(angle)).toBeCloseTo(flat, 3);
    // The per-degree rule differs by its shorter constant alone.
    const perDegree = airframe({ thickness: T, insideRadius: R });
    const shorter = (0.017453 - 0.01743) * R * angle;
    expect(rule.allowance(angle) - perDegree.allowance(angle)).toBeCloseTo(shorter, 4);
  });
});

// W. Greco, Aspects of Metal Developed Bend Length, 2010: the neutral line lies between .3 and .5
// of the thickness, at .4 as a rule. The rules that need no factor imply one, here for bends of
// the rows and columns of the factor table in Machinery's Handbook, 26th ed.
test('the implied factors are in the published range', () => {
  for (const [T, R] of [
    [0.032, 0.03],
    [0.06, 0.06],
    [0.093, 0.188],
    [0.029, 0.03],
  ] as const) {
    for (const name of ['airframe', 'steel standard', 'handbook']) {
      const rule = bendRuleNamed(name)?.make({ thickness: T, insideRadius: R, metal: 'half hard' });
      const neutral = (rule?.allowance(90) ?? Number.NaN) / (Math.PI / 2);
      const factor = (neutral - R) / T;
      expect(factor).toBeGreaterThan(0.3);
      expect(factor).toBeLessThan(0.5);
    }
  }
});
