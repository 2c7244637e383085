import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merged } from '../layout/drop-surplus.js';
import { layOut } from '../layout/lay-out.js';
import { layoutFaults } from '../layout/replay.test.support.js';
import { cuttingRules } from '../pattern/cutting-rules.js';
import { legal } from '../pattern/legal.js';
import type { Part } from '../pattern/part.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import { patternKey } from '../pattern/pattern-key.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { CuttingProblem } from '../problem.js';
import { fillBox, produced, randomSheets } from '../random-pattern.test.support.js';
import { HandlingCount } from './handling.js';
import { tidy } from './tidy.js';

const problem: CuttingProblem = {
  pieces: ['bar', 'lid', 'tag', 'rim'].map((id, i) => ({
    id,
    length: [50, 30, 20, 20][i],
    width: 10,
    quantity: 1,
    mayTurn: false,
  })),
  stock: [{ kind: 'sheet', id: 's', length: 100, width: 20, price: 9, onHand: 0, canBuy: 'any' }],
  shear: { firstCut: 'along' },
};
const rules = cuttingRules(problem);
const box = fillBox({ length: 100, width: 20 }, rules);
const strip = (...pieces: readonly number[]) => ({
  extent: 10,
  part: {
    kind: 'split',
    cuts: 'across',
    parts: pieces.map((piece) => ({
      extent: problem.pieces[piece].length,
      part: { kind: 'lay', piece, turned: false },
    })),
  } satisfies Part,
});
const sheet = (...parts: readonly ReturnType<typeof strip>[]): PatternCount => ({
  pattern: patternOf({ kind: 'split', cuts: 'along', parts }, 0, box, rules),
  count: 1,
});

describe('HandlingCount', () => {
  it('counts cuts for every sheet, settings for every layout', () => {
    const { pattern } = sheet(strip(0, 1, 2), strip(0, 1, 2));
    // One cut between the strips; then both at 50, then both at 30, and the tag is what is left.
    expect(new HandlingCount([box], rules).of([{ pattern, count: 3 }])).toEqual({
      layouts: 1,
      gaugeSettings: 3,
      cuts: 15,
    });
    expect(new HandlingCount([box], rules).score([{ pattern, count: 3 }])).toBe(145);
    const weights = { layout: 1, gauge: 0, cut: 2 };
    expect(new HandlingCount([box], rules, weights).score([{ pattern, count: 3 }])).toBe(31);
  });
});

describe('tidy', () => {
  it('lets strips change places so that sheets become alike', () => {
    const a = strip(0, 0);
    const b = strip(1, 1, 1);
    const tidied = tidy([sheet(a, a), sheet(b, b), sheet(a, b)], [box], rules);
    expect(tidied).toHaveLength(1);
    expect(tidied[0].count).toBe(3);
  });

  it('lets pieces change places so that strips become alike', () => {
    // Rims and tags are of one length: four of either, or two and two in each strip.
    const mixed = sheet(strip(0, 2, 2), strip(0, 3, 3));
    const tidied = tidy([mixed, sheet(strip(0, 2, 3), strip(0, 2, 3))], [box], rules);
    expect(tidied).toHaveLength(1);
  });

  it('gives back what it was given when the time is over', () => {
    const sheets = [sheet(strip(0, 0), strip(0, 0)), sheet(strip(1, 1, 1), strip(0, 0))];
    expect(tidy(sheets, [box], rules, {}, { left: () => 0 })).toEqual(sheets);
  });

  it('cuts sheets anew so that they become alike', () => {
    // No two of these sheets have a strip alike. Two sheets hold a plate, a bar and two strips
    // each, in bands of 14 and 6; the third holds the other two bars.
    const mixed = {
      ...problem,
      pieces: [
        { id: 'plate', length: 60, width: 14, quantity: 2, mayTurn: false },
        { id: 'bar', length: 60, width: 6, quantity: 4, mayTurn: false },
        { id: 'strip', length: 40, width: 5, quantity: 4, mayTurn: false },
      ],
    };
    const rules = cuttingRules(mixed);
    const box = fillBox({ length: 100, width: 20 }, rules);
    const cut = (...strips: readonly (readonly [number, ...number[]])[]): PatternCount => {
      const parts = strips.map(([extent, ...pieces]) => ({
        extent,
        part: {
          kind: 'split',
          cuts: 'across',
          parts: pieces.map((piece) => ({
            extent: mixed.pieces[piece].length,
            part: { kind: 'lay', piece, turned: false },
          })),
        } satisfies Part,
      }));
      return {
        pattern: patternOf({ kind: 'split', cuts: 'along', parts }, 0, box, rules),
        count: 1,
      };
    };
    const apart = [
      cut([14, 0, 2], [6, 1]),
      cut([15, 0], [5, 2, 2]),
      cut([6, 1, 2], [6, 1], [6, 1]),
    ];
    const tidied = tidy(apart, [box], rules);
    expect(tidy(apart, [box], rules)).toEqual(tidied);
    expect(produced(tidied, 3)).toEqual([2, 4, 4]);
    expect(tidied).toHaveLength(2);
  });

  it('cuts the same pieces from as many sheets for the same, with no more trouble', () => {
    let better = 0;
    fc.assert(
      fc.property(randomSheets(), ({ problem, stock, rules, box, sheets }) => {
        const before = merged(sheets);
        const after = tidy(before, [fillBox(box, rules)], rules, problem.weights);
        const handling = new HandlingCount([box], rules, problem.weights);
        expect(produced(after, problem.pieces.length)).toEqual(
          produced(before, problem.pieces.length),
        );
        const sum = (of: readonly PatternCount[], each: (sheet: PatternCount) => number) =>
          of.reduce((sum, sheet) => sum + each(sheet) * sheet.count, 0);
        expect(sum(after, () => 1)).toBe(sum(before, () => 1));
        expect(sum(after, ({ pattern }) => pattern.kept)).toBeGreaterThanOrEqual(
          sum(before, ({ pattern }) => pattern.kept),
        );
        expect(handling.score(after)).toBeLessThanOrEqual(handling.score(before));
        if (handling.score(after) < handling.score(before)) better++;
        expect(new Set(after.map(({ pattern }) => patternKey(pattern))).size).toBe(after.length);
        for (const { pattern, count } of after) {
          expect(legal(pattern.part, box, rules)).toBe(true);
          expect(pattern).toEqual(patternOf(pattern.part, 0, box, rules));
          const faults = layoutFaults(layOut(pattern, stock, count, problem), stock, problem);
          expect(faults.filter((fault) => !fault.includes('stage 0 is too long'))).toEqual([]);
        }
      }),
      { numRuns: 60 },
    );
    expect(better).toBeGreaterThan(10);
  });
});
