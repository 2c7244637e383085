import { bendRules } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { makeBendRule, RULE_SIZES } from './bend-rule-sizes.js';

const METAL = { thickness: 0.28, 'inside radius': 0.4 };

describe('sizes of bend rules', () => {
  test('carry the name of their rule where only one rule has them', () => {
    expect(RULE_SIZES.map(({ name }) => name)).toEqual([
      'inside radius',
      'neutral axis factor',
      'airframe print',
      'handbook metal',
    ]);
  });

  test('make every rule', () => {
    const values = { ...METAL, 'neutral axis factor': 0.44, 'handbook metal': 'half hard' };
    for (const { name } of bendRules) {
      const made = makeBendRule(name, values);
      expect(made.ok && made.rule.name).toBe(name);
    }
  });

  test('that are lacking are told by name, all of them', () => {
    expect(makeBendRule('handbook', { 'inside radius': 0.4 })).toEqual({
      ok: false,
      faults: [
        {
          name: 'thickness',
          complaint: {
            code: 'missing',
            hint: 'the thickness of the metal, which the handbook rule needs',
          },
        },
        {
          name: 'handbook metal',
          complaint: {
            code: 'missing',
            hint: 'soft, half hard or hard, which the handbook rule needs',
          },
        },
      ],
    });
  });

  test('out of range are told at their own name', () => {
    const made = makeBendRule('neutral axis', { ...METAL, 'neutral axis factor': 7 });
    expect(made).toMatchObject({
      ok: false,
      faults: [{ name: 'neutral axis factor', complaint: { code: 'bend rule' } }],
    });
  });
});
