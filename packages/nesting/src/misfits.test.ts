import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everyCutting } from './every-cutting.test.support.js';
import { stockClasses } from './master/stock-class.js';
import { misfits } from './misfits.js';
import { cuttingRules } from './pattern/cutting-rules.js';
import { either, piece, sheet } from './plan-cutting.test.support.js';
import type { CuttingProblem, Stock } from './problem.js';
import { randomOfKind, SMALL } from './random-kinds.test.support.js';

function misfitsOf(problem: CuttingProblem, over = false) {
  const rules = cuttingRules(problem);
  return misfits(
    problem,
    stockClasses(problem, rules.limits, () => 0),
    rules,
    () => over,
  );
}

/** Pieces that nothing cut from any of the stock contains. */
function neverCut(problem: CuttingProblem, stock: readonly Stock[]): readonly string[] {
  const yields = stock.flatMap((each) => everyCutting(problem, each));
  return problem.pieces
    .filter((_, i) => !yields.some(({ counts }) => counts[i] > 0))
    .map(({ id }) => id);
}

describe('misfits', () => {
  it('are just those that trying every cut never frees', () => {
    const features = {
      stages: 'any',
      kerf: true,
      trim: true,
      narrowestStrip: true,
      longestCut: true,
      limitedStock: true,
      offcuts: true,
      rolling: true,
    } as const;
    const seen: Record<string, number> = {};
    fc.assert(
      fc.property(randomOfKind(features, SMALL), (problem) => {
        const found = misfitsOf(problem);
        const there = problem.stock.filter(
          (stock) => stock.kind === 'offcut' || stock.onHand > 0 || stock.canBuy !== 0,
        );
        const status = found?.status ?? 'all fit';
        seen[status] = (seen[status] ?? 0) + 1;
        const missing = neverCut(problem, there);
        if (found === undefined) {
          expect(missing).toEqual([]);
          return;
        }
        expect(missing).not.toEqual([]);
        const nowhere = neverCut(problem, problem.stock);
        if (found.status === 'not enough stock') expect(nowhere).toEqual([]);
        else if (found.status === 'piece too large') {
          expect(found.pieces).toEqual(nowhere);
          const { longestCut: _, ...shear } = problem.shear;
          const still = new Set(neverCut({ ...problem, shear }, problem.stock));
          expect(found.forTheShear).toEqual(nowhere.filter((id) => !still.has(id)));
        } else {
          for (const id of found.pieces) expect(nowhere).toContain(id);
        }
      }),
      { numRuns: 400 },
    );
    expect(seen['all fit']).toBeGreaterThan(100);
    expect(seen['piece too large']).toBeGreaterThan(20);
    expect(seen['not enough stock']).toBeGreaterThan(1);
  });

  // The shear cannot cut along it, so that a piece is cut off first and trimmed then.
  const long = {
    stock: [sheet('s', 40, 9)],
    shear: { firstCut: 'along', narrowestStrip: 3, longestCut: 25 },
  } as const;
  const flat = (id: string, width: number) => piece(id, 25, width, 1, { mayTurn: false });

  it('do not count a piece that only the last trim frees', () => {
    expect(misfitsOf({ ...long, pieces: [flat('a', 6)] })).toBeUndefined();
    // A sliver of 1 cannot be held.
    const status = 'piece too large';
    expect(misfitsOf({ ...long, pieces: [flat('a', 8)] })).toMatchObject({ status, pieces: ['a'] });
  });

  it('are not all found once time is over, where many pieces need pricing', () => {
    const trimmed = Array.from({ length: 6 }, (_, i) => flat(`trimmed ${i}`, 6));
    const problem: CuttingProblem = { ...long, pieces: [...trimmed, flat('never', 8)] };
    expect(misfitsOf(problem)).toMatchObject({ pieces: ['never'] });
    expect(misfitsOf(problem, true)).toBeUndefined();
    const few = { ...problem, pieces: problem.pieces.slice(4) };
    expect(misfitsOf(few, true)).toMatchObject({ pieces: ['never'] });
    // What lies on no stock needs no pricing.
    const outsize = { ...problem, pieces: [...problem.pieces, flat('outsize', 10)] };
    expect(misfitsOf(outsize, true)).toMatchObject({ pieces: ['outsize'] });
  });

  it('do not count pieces of which none is wanted', () => {
    const spare = piece('spare', 90, 90, 0, { spares: 2 });
    const problem = {
      pieces: [piece('a', 5, 5, 1), spare],
      stock: [sheet('s', 20, 9)],
      shear: either,
    };
    expect(misfitsOf(problem)).toBeUndefined();
  });
});
