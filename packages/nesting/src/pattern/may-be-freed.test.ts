import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everyCutting } from '../every-cutting.test.support.js';
import { offcut, piece } from '../plan-cutting.test.support.js';
import type { Shear } from '../problem.js';
import { mayBeFreed } from './may-be-freed.js';

const side = fc.integer({ min: 1, max: 9 });

type Sides = readonly [length: number, width: number];

/** Whether trying every cut at every tick frees a piece, which may not turn, from an offcut. */
function everFreed([l, w]: Sides, [L, W]: Sides, machine: Partial<Shear>): boolean {
  const stock = offcut('A', L, W);
  const problem = {
    pieces: [piece('a', l, w, 1, { mayTurn: false })],
    stock: [stock],
    shear: { firstCut: 'either', stages: 'free', ...machine } as const,
  };
  return everyCutting(problem, stock).some(({ counts }) => counts[0] > 0);
}

describe('mayBeFreed', () => {
  it('is true just where trying every cut frees the piece', () => {
    const seen = { true: 0, false: 0 };
    fc.assert(
      fc.property(side, side, side, side, side, fc.nat(2), (l, w, L, W, longestCut, kerf) => {
        fc.pre(l <= L && w <= W);
        const freed = everFreed([l, w], [L, W], { longestCut, kerf });
        const limits = { longestCut, kerf, narrowest: 1 };
        const lay = { length: l + kerf, width: w + kerf };
        expect(mayBeFreed(lay, { length: L + kerf, width: W + kerf }, limits)).toBe(freed);
        seen[`${freed}`]++;
      }),
      { numRuns: 2000 },
    );
    expect(Math.min(seen.true, seen.false)).toBeGreaterThan(100);
  });

  it('is false where the piece is narrower than may be parted, unless it is as long or wide as the box', () => {
    const limits = { longestCut: Number.POSITIVE_INFINITY, kerf: 2, narrowest: 5 };
    const box = { length: 22, width: 12 };
    const may = (length: number, width: number) => mayBeFreed({ length, width }, box, limits);
    expect([may(6, 9), may(7, 9), may(9, 6), may(9, 7)]).toEqual([false, true, false, true]);
    expect([may(22, 6), may(22, 7), may(6, 12), may(22, 12)]).toEqual([false, true, false, true]);
    expect(mayBeFreed({ length: 6, width: 9 }, { length: 6, width: 12 }, limits)).toBe(true);
  });

  it('is true wherever trying every cut frees the piece, whatever is too narrow', () => {
    const seen = { true: 0, false: 0 };
    const narrow = fc.integer({ min: 1, max: 5 });
    fc.assert(
      fc.property(side, side, side, side, narrow, fc.nat(2), (l, w, L, W, narrowestStrip, kerf) => {
        fc.pre(l <= L && w <= W);
        const freed = everFreed([l, w], [L, W], { narrowestStrip, kerf });
        const limits = { longestCut: Number.POSITIVE_INFINITY, kerf, narrowest: narrowestStrip };
        const lay = { length: l + kerf, width: w + kerf };
        const may = mayBeFreed(lay, { length: L + kerf, width: W + kerf }, limits);
        if (freed) expect(may).toBe(true);
        seen[`${may}`]++;
      }),
      { numRuns: 2000 },
    );
    expect(Math.min(seen.true, seen.false)).toBeGreaterThan(100);
  });
});
