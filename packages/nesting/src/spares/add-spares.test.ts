import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut } from '../layout/lay-out.js';
import { layoutFaults } from '../layout/replay.test.support.js';
import { cuttingRules } from '../pattern/cutting-rules.js';
import { legal } from '../pattern/legal.js';
import type { Part } from '../pattern/part.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { CuttingProblem } from '../problem.js';
import { fillBox, produced, randomSheets } from '../random-pattern.test.support.js';
import { addSpares } from './add-spares.js';

const lay = (piece: number): Part => ({ kind: 'lay', piece, turned: false });
const problem = (change: Partial<CuttingProblem> = {}): CuttingProblem => ({
  pieces: [
    { id: 'bar', length: 60, width: 20, quantity: 1, mayTurn: false },
    { id: 'tag', length: 15, width: 10, quantity: 1, mayTurn: true },
    { id: 'lid', length: 25, width: 18, quantity: 1, mayTurn: false },
  ],
  stock: [{ kind: 'offcut', id: 's', length: 100, width: 36 }],
  shear: { firstCut: 'along' },
  ...change,
});
/** A bar in a strip of its own: 40 x 20 left beside it, 100 x 16 above it. */
const bar: Part = {
  kind: 'split',
  cuts: 'along',
  parts: [
    { extent: 20, part: { kind: 'split', cuts: 'across', parts: [{ extent: 60, part: lay(0) }] } },
  ],
};

function spares(of: CuttingProblem, wanted: readonly number[], count = 1) {
  const rules = cuttingRules(of);
  const box = { length: 100, width: 36, ...(of.keep?.[0] && { keep: of.keep[0] }) };
  const sheets = [{ pattern: patternOf(bar, 0, box, rules), count }];
  return addSpares(sheets, wanted, [fillBox(box, rules)], rules);
}

describe('addSpares', () => {
  it('fills the end of a strip with what covers most, and the rest of the sheet with strips', () => {
    // Beside the bar: a lid and a tag, 25 + 15 = 40, of 20 with the tag trimmed. Above it: strips
    // of 15 with ten tags on end, or of 10 with six lying.
    const { spares: found } = spares(problem(), [0, 99, 99]);
    expect(found).toEqual([0, 11, 1]);
  });

  it('adds no more than are wanted, and none that do not fit', () => {
    expect(spares(problem(), [9, 3, 0]).spares).toEqual([0, 3, 0]);
    expect(spares(problem(), [0, 0, 0]).spares).toEqual([0, 0, 0]);
  });

  it('adds alike to equal sheets, and what is left to single ones', () => {
    const { sheets, spares: found } = spares(problem(), [0, 0, 2], 3);
    expect(found).toEqual([0, 0, 2]);
    expect(sheets.map(({ pattern, count }) => [pattern.counts, count])).toEqual([
      [
        [
          [0, 1],
          [2, 1],
        ],
        2,
      ],
      [[[0, 1]], 1],
    ]);
    expect(spares(problem(), [0, 0, 3], 3).sheets).toHaveLength(1);
  });

  it('leaves most of thousands of sheets as they are once time is over', () => {
    const rules = cuttingRules(problem());
    const box = { length: 100, width: 36 };
    const sheets = Array.from({ length: 1000 }, () => ({
      pattern: patternOf(bar, 0, box, rules),
      count: 1,
    }));
    const found = (over: boolean) => {
      const filled = addSpares(sheets, [0, 0, 5000], [fillBox(box, rules)], rules, () => over);
      expect(filled.sheets.reduce((sum, { count }) => sum + count, 0)).toBe(1000);
      expect(produced(filled.sheets, 3)).toEqual([1000, 0, filled.spares[2]]);
      return filled.spares[2];
    };
    const all = found(false);
    expect(all).toBeGreaterThanOrEqual(1000);
    expect(found(true)).toBeGreaterThan(0);
    expect(found(true)).toBeLessThan(all / 2);
  });

  it('cuts on nothing that is worth keeping', () => {
    const keep = [{ leastLength: 90, leastWidth: 16, coinsPerMillion: 100_000 }];
    // 100 x 16 is worth 160; 40 x 20 is scrap.
    expect(spares(problem({ keep }), [0, 99, 99]).spares).toEqual([0, 1, 1]);
  });

  it('parts off nothing that the shear cannot hold', () => {
    const shear = { firstCut: 'along', narrowestStrip: 11 } as const;
    // Tags are too narrow to be cut; the lid would be trimmed by 2.
    expect(spares(problem({ shear }), [0, 99, 99]).spares).toEqual([0, 0, 0]);
  });

  it('costs nothing, changes nothing else, and leaves layouts that can be cut', () => {
    let added = 0;
    fc.assert(
      fc.property(randomSheets(), ({ problem, stock, rules, box, sheets }) => {
        const wanted = problem.pieces.map(({ spares = 0 }) => spares);
        const filled = addSpares(sheets, wanted, [fillBox(box, rules)], rules);
        const before = produced(sheets, wanted.length);
        const after = produced(filled.sheets, wanted.length);
        expect(after).toEqual(before.map((copies, i) => copies + filled.spares[i]));
        filled.spares.forEach((copies, i) => {
          expect(copies).toBeGreaterThanOrEqual(0);
          expect(copies).toBeLessThanOrEqual(wanted[i]);
        });
        const sum = (of: readonly PatternCount[], each: (sheet: PatternCount) => number) =>
          of.reduce((sum, sheet) => sum + each(sheet) * sheet.count, 0);
        expect(sum(filled.sheets, () => 1)).toBe(sum(sheets, () => 1));
        expect(sum(filled.sheets, ({ pattern }) => pattern.kept)).toBeGreaterThanOrEqual(
          sum(sheets, ({ pattern }) => pattern.kept),
        );
        for (const { pattern, count } of filled.sheets) {
          expect(legal(pattern.part, box, rules)).toBe(true);
          const faults = layoutFaults(layOut(pattern, stock, count, problem), stock, problem);
          expect(faults.filter((fault) => !fault.includes('stage 0 is too long'))).toEqual([]);
        }
        added += filled.spares.some((copies) => copies > 0) ? 1 : 0;
      }),
      { numRuns: 300 },
    );
    expect(added).toBeGreaterThan(50);
  });

  it('leaves no room for a wanted spare at the end of a strip', () => {
    let looked = 0;
    fc.assert(
      fc.property(randomSheets(2), ({ problem, stock, sheets }) => {
        const { longestCut: _, ...shear } = problem.shear;
        const plain = {
          pieces: problem.pieces,
          stock: [stock],
          shear: { ...shear, narrowestStrip: 0 },
        };
        const rules = cuttingRules(plain);
        const box = fillBox({ length: stock.length, width: stock.width }, rules);
        fc.pre((shear.kerf ?? 0) === 0 && (shear.trim ?? 0) === 0);
        const wanted = plain.pieces.map(({ spares = 0 }) => spares);
        const filled = addSpares(sheets, wanted, [box], rules);
        for (const { pattern } of filled.sheets) {
          if (pattern.part.kind === 'lay') continue;
          const along = pattern.part.cuts === 'along';
          for (const { extent, part } of pattern.part.parts) {
            if (part.kind === 'lay' || part.cuts === pattern.part.cuts) continue;
            const used = part.parts.reduce((sum, slice) => sum + slice.extent, 0);
            const rest = (along ? box.length : box.width) - used;
            const fitting = box.lays.filter(
              (lay) =>
                filled.spares[lay.piece] < wanted[lay.piece] &&
                (along ? lay.length : lay.width) <= rest &&
                (along ? lay.width : lay.length) <= extent,
            );
            expect(fitting).toEqual([]);
            looked++;
          }
        }
      }),
      { numRuns: 150 },
    );
    expect(looked).toBeGreaterThan(100);
  });
});
