import { describe, expect, it } from 'vitest';
import { checkOptions } from './check-options.js';
import { planCutting } from './plan-cutting.js';
import { piece, sheet } from './plan-cutting.test.support.js';

const problem = {
  pieces: [piece('a', 10, 5, 1)],
  stock: [sheet('s', 20, 20)],
  shear: { firstCut: 'either' },
} as const;

describe('checkOptions', () => {
  it.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses a time limit of %s', async (limit) => {
    const options = { timeLimitSeconds: limit };
    const fault = {
      code: 'not a finite number',
      path: 'options.timeLimitSeconds',
      received: limit,
    };
    await expect(planCutting(problem, options)).rejects.toMatchObject(fault);
  });

  it('refuses a seed that is no number, and takes none', () => {
    expect(() => checkOptions({ seed: Number.NaN })).toThrow('options.seed: a finite number');
    expect(() => checkOptions({ seed: 3, timeLimitSeconds: 0 })).not.toThrow();
    expect(() => checkOptions({})).not.toThrow();
  });
});
