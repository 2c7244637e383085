import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everyCutting } from '../every-cutting.test.support.js';
import { layOut } from '../layout/lay-out.js';
import { layoutFaults } from '../layout/replay.test.support.js';
import { stockClasses } from '../master/stock-class.js';
import { cuttingRules, keepRuleFor } from '../pattern/cutting-rules.js';
import { legal } from '../pattern/legal.js';
import type { Pattern } from '../pattern/part.js';
import { patternOf } from '../pattern/pattern-of.js';
import { either, offcut, piece } from '../plan-cutting.test.support.js';
import type { CuttingProblem, Stages, Stock } from '../problem.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { everyPattern } from './every-pattern.js';

/** What a pattern yields of each piece, and in coins. */
interface Yielded {
  readonly counts: readonly number[];
  readonly kept: number;
}

function listed(problem: CuttingProblem, stock: Stock) {
  const rules = cuttingRules(problem);
  const one = stock.kind === 'sheet' ? { ...stock, onHand: 1, canBuy: 0 } : stock;
  const boxes = stockClasses({ ...problem, stock: [one] }, rules.limits, () => 0).map(
    ({ box }) => ({ ...box, keep: keepRuleFor(stock, problem.keep) }),
  );
  const demand = problem.pieces.map(({ quantity }) => quantity);
  return { rules, boxes, patterns: everyPattern(boxes, demand, rules, () => false) };
}

function yielded({ counts, kept }: Pattern, problem: CuttingProblem): Yielded {
  const copies = new Map(counts);
  return { counts: problem.pieces.map((_, i) => copies.get(i) ?? 0), kept };
}

const matches = (a: Yielded, b: Yielded) =>
  a.kept >= b.kept && a.counts.every((copies, i) => copies >= b.counts[i]);

const FEATURES = {
  stages: 'any',
  kerf: true,
  trim: true,
  longestCut: true,
  narrowestStrip: true,
  offcuts: true,
  keep: true,
  rolling: true,
  spares: true,
} as const;

/** Each feature in every second problem. */
const problems = fc
  .record(Object.fromEntries(Object.keys(FEATURES).map((name) => [name, fc.boolean()])))
  .chain((drawn) =>
    randomOfKind(
      Object.fromEntries(Object.entries(FEATURES).filter(([name]) => drawn[name])),
      SMALL,
    ),
  );

describe('everyPattern', () => {
  it('lists legal patterns, and for all that trying every cut finds one that matches it', () => {
    let compared = 0;
    let valued = 0;
    fc.assert(
      fc.property(problems, (problem) => {
        for (const stock of problem.stock) {
          const { rules, boxes, patterns } = listed(problem, stock);
          const found = patterns?.map((pattern) => yielded(pattern, problem)) ?? [];
          for (const pattern of patterns ?? []) {
            expect(legal(pattern.part, boxes[0], rules)).toBe(true);
            for (const [piece, copies] of pattern.counts) {
              expect(copies).toBeLessThanOrEqual(problem.pieces[piece].quantity);
            }
            expect(pattern).toEqual(patternOf(pattern.part, 0, boxes[0], rules));
            expect(layoutFaults(layOut(pattern, stock, 1, problem), stock, problem)).toEqual([]);
          }
          const all = everyCutting(problem, stock).filter(({ counts }) =>
            counts.some((n) => n > 0),
          );
          for (const each of all) expect(found.some((other) => matches(other, each))).toBe(true);
          // And none twice, or worse than another.
          for (const each of found) {
            expect(found.filter((other) => matches(other, each))).toEqual([each]);
            if (each.kept > 0) valued++;
          }
          compared += all.length;
        }
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(1_000);
    expect(valued).toBeGreaterThan(100);
  });

  it('weighs a piece more against a larger remnant', () => {
    const stock = offcut('A', 10, 6);
    const problem: CuttingProblem = {
      pieces: [piece('a', 4, 3, 5)],
      stock: [stock],
      shear: either,
      keep: [{ leastLength: 6, leastWidth: 3, coinsPerMillion: 1_000_000 }],
    };
    const all = listed(problem, stock).patterns ?? [];
    // One leaves 6 x 6, and 4 x 3 which is too short; or 10 x 3 above, and 6 x 3 beside it: 48.
    // Two end to end leave 10 x 3; one above the other leave 6 x 6: 36. Three leave 6 x 3.
    // Four leave 2 x 6, which is too narrow. Five would fill it all, but not in two stages.
    expect(all.map(({ counts, kept }) => [counts[0][1], kept]).sort()).toEqual([
      [1, 48],
      [2, 36],
      [3, 18],
      [4, 0],
    ]);
  });

  it('looks into long rows of small pieces', () => {
    const rows = (stages: Stages, stock: Stock) =>
      listed(
        { pieces: [piece('a', 1, 1, 3)], stock: [stock], shear: { ...either, stages } },
        stock,
      ).patterns?.map(({ counts }) => counts[0][1]);
    for (const stages of [2, 3, 'free'] as const) {
      expect(rows(stages, offcut('A', 380, 2))).toEqual([3]);
      expect(rows(stages, offcut('A', 45, 45))).toEqual([3]);
    }
  });

  it('gives up where the stock is large, or the pieces many', () => {
    const stock = offcut('A', 30, 20);
    const of = (problem: Partial<CuttingProblem>) =>
      listed({ pieces: [piece('a', 4, 3, 5)], stock: [stock], shear: either, ...problem }, stock);
    expect(of({}).patterns?.length).toBe(1);
    const many = Array.from({ length: 12 }, (_, i) => piece(`${i}`, 4 + i, 3, 1));
    expect(of({ pieces: many }).patterns).toBeUndefined();
    const large = offcut('B', 300, 200);
    const { patterns } = listed(
      { pieces: [piece('a', 4, 3, 5)], stock: [large], shear: { ...either, stages: 'free' } },
      large,
    );
    expect(patterns).toBeUndefined();
    const small = listed({ pieces: [piece('a', 4, 3, 5)], stock: [stock], shear: either }, stock);
    expect(everyPattern(small.boxes, [5], small.rules, () => true)).toBeUndefined();
  });
});
