import { verifyPlan } from '@stripwright/nesting';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { planFileSchema } from './plan-file.js';
import { planOnFile } from './plan-on-file.js';
import { anyPlan } from './random-plan.test.support.js';

it('draws plans that the verifier finds good', () => {
  const sizes: number[] = [];
  fc.assert(
    fc.property(anyPlan, (file) => {
      expect(planFileSchema.safeParse(file).error).toBeUndefined();
      const { problem, plan } = planOnFile(file);
      expect(verifyPlan(problem, plan)).toEqual([]);
      sizes.push(...file.layouts.map(({ pieces }) => pieces.length));
    }),
    { numRuns: 300 },
  );
  expect(Math.min(...sizes)).toBeLessThan(3);
  expect(Math.max(...sizes)).toBeGreaterThan(300);
});
