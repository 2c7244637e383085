import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugeChanges, gaugeSettings } from './gauge-changes.js';
import type { Layout } from './plan.js';
import type { CuttingProblem } from './problem.js';
import { drawnPlan } from './verify/drawn-plan.test.support.js';

// By hand: strips of 4, 4 and 3 off an offcut of 10 x 11, the first cut to length twice at 4.
const problem: CuttingProblem = {
  pieces: [
    { id: 'square', length: 4, width: 4, quantity: 2, mayTurn: false },
    { id: 'strip', length: 10, width: 4, quantity: 1, mayTurn: false },
    { id: 'last', length: 10, width: 3, quantity: 1, mayTurn: false },
  ],
  stock: [{ kind: 'offcut', id: 'A', length: 10, width: 11 }],
  shear: { firstCut: 'along' },
};
const off = { stage: 1, x1: 0, x2: 10 };
const toLength = { stage: 2, y1: 0, y2: 4 };
const layout: Layout = {
  stock: 'A',
  count: 1,
  pieces: [
    { piece: 'square', x: 0, y: 0, length: 4, width: 4, turned: false },
    { piece: 'square', x: 4, y: 0, length: 4, width: 4, turned: false },
    { piece: 'strip', x: 0, y: 4, length: 10, width: 4, turned: false },
    { piece: 'last', x: 0, y: 8, length: 10, width: 3, turned: false },
  ],
  cuts: [
    { ...off, y1: 4, y2: 4 },
    { ...off, y1: 8, y2: 8 },
    { ...toLength, x1: 4, x2: 4 },
    { ...toLength, x1: 8, x2: 8 },
  ],
  remnants: [{ x: 8, y: 0, length: 2, width: 4, keep: false, value: 0 }],
};

describe('changes of the gauge', () => {
  it('counts one for equal strips and equal lengths', () => {
    expect(gaugeSettings(problem, layout)).toEqual([4, 4, 4, 4]);
    expect(gaugeChanges(problem, layout)).toBe(1);
  });

  it('counts anew where a cut is made in a larger rectangle', () => {
    // The upper line first: 8 from the edge, then 4 in what came off.
    const [first, second, ...rest] = layout.cuts;
    const other = { ...layout, cuts: [second, first, ...rest] };
    expect(gaugeSettings(problem, other)).toEqual([8, 4, 4, 4]);
    expect(gaugeChanges(problem, other)).toBe(2);
    // And to length from the far end: 8 first, then 4 of it.
    const both = { ...layout, cuts: [second, first, rest[1], rest[0]] };
    expect(gaugeSettings(problem, both)).toEqual([8, 4, 8, 4]);
    expect(gaugeChanges(problem, both)).toBe(4);
  });

  it('counts none where nothing is cut', () => {
    const whole: CuttingProblem = {
      ...problem,
      pieces: [{ id: 'all', length: 10, width: 11, quantity: 1, mayTurn: false }],
    };
    const pieces = [{ piece: 'all', x: 0, y: 0, length: 10, width: 11, turned: false }];
    expect(gaugeChanges(whole, { ...layout, pieces, cuts: [], remnants: [] })).toBe(0);
  });

  it('is set for every cut, and changed at most once for each', () => {
    fc.assert(
      fc.property(drawnPlan, ({ problem, plan }) => {
        for (const layout of plan.layouts) {
          const settings = gaugeSettings(problem, layout);
          const least = problem.shear.narrowestStrip ?? 0;
          settings.forEach((setting, i) => {
            // A trimmed edge may be all dust; anything else is at least as wide as the shear holds.
            const { stage } = layout.cuts[i];
            expect(setting).toBeGreaterThanOrEqual(stage === 0 ? 0 : Math.max(1, least));
          });
          const changes = gaugeChanges(problem, layout);
          expect(changes).toBeGreaterThanOrEqual(new Set(settings).size);
          expect(changes).toBeLessThanOrEqual(settings.length);
        }
      }),
      { numRuns: 100 },
    );
  });
});
