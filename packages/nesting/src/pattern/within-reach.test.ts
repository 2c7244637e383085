import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everyCutting } from '../every-cutting.test.support.js';
import { offcut, piece } from '../plan-cutting.test.support.js';
import { withinReach } from './within-reach.js';

const side = fc.integer({ min: 1, max: 9 });

describe('withinReach', () => {
  it('is true just where trying every cut frees the piece', () => {
    const seen = { true: 0, false: 0 };
    fc.assert(
      fc.property(side, side, side, side, side, fc.nat(2), (l, w, L, W, longestCut, kerf) => {
        fc.pre(l <= L && w <= W);
        const problem = {
          pieces: [piece('a', l, w, 1, { mayTurn: false })],
          stock: [offcut('A', L, W)],
          shear: { firstCut: 'either', stages: 'free', longestCut, kerf } as const,
        };
        const freed = everyCutting(problem, problem.stock[0]).some(({ counts }) => counts[0] > 0);
        const limits = { longestCut, kerf, narrowest: 1 };
        const lay = { length: l + kerf, width: w + kerf };
        expect(withinReach(lay, { length: L + kerf, width: W + kerf }, limits)).toBe(freed);
        seen[`${freed}`]++;
      }),
      { numRuns: 2000 },
    );
    expect(Math.min(seen.true, seen.false)).toBeGreaterThan(100);
  });
});
