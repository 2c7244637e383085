import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingRules } from '../pattern/cutting-rules.js';
import { legal } from '../pattern/legal.js';
import type { Part } from '../pattern/part.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import { patternKey } from '../pattern/pattern-key.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { CuttingProblem } from '../problem.js';
import { produced, randomSheets } from '../random-pattern.test.support.js';
import { dropSurplus } from './drop-surplus.js';
import { layOut } from './lay-out.js';
import { layoutFaults } from './replay.test.support.js';

const problem = (narrowestStrip: number): CuttingProblem => ({
  pieces: [
    { id: 'lid', length: 30, width: 20, quantity: 1, mayTurn: false },
    { id: 'bar', length: 40, width: 15, quantity: 2, mayTurn: false },
  ],
  stock: [{ kind: 'sheet', id: 's', length: 100, width: 42, price: 9, onHand: 0, canBuy: 'any' }],
  shear: { firstCut: 'along', narrowestStrip },
});
const strip = (extent: number, ...lays: readonly (readonly [number, number])[]) => ({
  extent,
  part: {
    kind: 'split',
    cuts: 'across',
    parts: lays.map(([extent, piece]) => ({
      extent,
      part: { kind: 'lay', piece, turned: false },
    })),
  } satisfies Part,
});

function dropped(of: CuttingProblem, part: Part, count: number, demand: readonly number[]) {
  const rules = cuttingRules(of);
  const box = { length: 100, width: 42 };
  const pattern = patternOf(part, 0, box, rules);
  return dropSurplus([{ pattern, count }], demand, [box], rules).map(({ pattern, count }) => [
    pattern.part,
    count,
  ]);
}

describe('dropSurplus', () => {
  const part: Part = {
    kind: 'split',
    cuts: 'along',
    parts: [strip(20, [40, 1], [30, 0]), strip(15, [40, 1])],
  };

  it('narrows a strip to the widest piece left in it', () => {
    const left = { ...part, parts: [strip(15, [40, 1]), strip(15, [40, 1])] };
    expect(dropped(problem(1), part, 1, [0, 2])).toEqual([[left, 1]]);
  });

  it('takes a few of a hundred thousand pieces out of one strip', () => {
    const pins = 150_000;
    const of: CuttingProblem = {
      pieces: [{ id: 'pin', length: 1, width: 5, quantity: 1, mayTurn: false }],
      stock: [{ kind: 'offcut', id: 'A', length: pins, width: 5 }],
      shear: { firstCut: 'along' },
    };
    const rules = cuttingRules(of);
    const box = { length: pins, width: 5 };
    const [pin] = strip(5, [1, 0]).part.parts;
    const parts = Array.from({ length: pins }, () => pin);
    const full = { extent: 5, part: { kind: 'split', cuts: 'across', parts } } as const;
    const pattern = patternOf({ kind: 'split', cuts: 'along', parts: [full] }, 0, box, rules);
    const [left] = dropSurplus([{ pattern, count: 1 }], [pins - 7], [box], rules);
    expect(left.pattern.counts).toEqual([[0, pins - 7]]);
  });

  it('leaves a strip as it is where narrowing would part off more narrowly than the shear holds', () => {
    const of = {
      ...problem(8),
      pieces: [
        ...problem(8).pieces,
        { id: 'slat', length: 30, width: 12, quantity: 1, mayTurn: false },
        { id: 'tag', length: 20, width: 10, quantity: 1, mayTurn: false },
      ],
    };
    // In a strip of 20 the slat and the tag are trimmed by 8 and 10; in one of 12 the tag by 2.
    const mixed: Part = { ...part, parts: [strip(20, [30, 0], [30, 2], [20, 3])] };
    expect(dropped(of, mixed, 1, [0, 0, 1, 1])).toEqual([
      [{ ...part, parts: [strip(20, [30, 2], [20, 3])] }, 1],
    ]);
    expect(dropped(of, mixed, 1, [0, 0, 1, 0])).toEqual([
      [{ ...part, parts: [strip(12, [30, 2])] }, 1],
    ]);
  });

  it('changes equal sheets alike as far as the surplus goes', () => {
    const left = { ...part, parts: [strip(20, [40, 1], [30, 0])] };
    expect(dropped(problem(1), part, 4, [4, 7])).toEqual([
      [left, 1],
      [part, 3],
    ]);
    expect(dropped(problem(1), part, 4, [4, 4])).toEqual([[left, 4]]);
  });

  it('takes away sheets on which nothing is wanted', () => {
    expect(dropped(problem(1), part, 4, [2, 4])).toEqual([[part, 2]]);
    expect(dropped(problem(1), part, 4, [0, 0])).toEqual([]);
  });

  it('refuses a shortage', () => {
    expect(() => dropped(problem(1), part, 1, [2, 2])).toThrow('piece 0 comes 1 short');
  });

  it('meets demand exactly, in legal patterns worth no less', () => {
    let dropped = 0;
    fc.assert(
      fc.property(randomSheets(), fc.nat(), ({ problem, stock, rules, box, sheets }, seed) => {
        const before = produced(sheets, problem.pieces.length);
        const demand = before.map((copies, i) => copies - ((seed >> i) % (copies + 1)));
        const left = dropSurplus(sheets, demand, [box], rules);
        expect(produced(left, problem.pieces.length)).toEqual(demand);
        const kept = (sheets: readonly PatternCount[]) =>
          sheets.reduce((sum, { pattern, count }) => sum + pattern.kept * count, 0);
        const total = (sheets: readonly PatternCount[]) =>
          sheets.reduce((sum, { count }) => sum + count, 0);
        if (total(left) === total(sheets)) {
          expect(kept(left)).toBeGreaterThanOrEqual(kept(sheets));
        }
        expect(new Set(left.map(({ pattern }) => patternKey(pattern))).size).toBe(left.length);
        for (const { pattern, count } of left) {
          expect(legal(pattern.part, box, rules)).toBe(true);
          expect(pattern).toEqual(patternOf(pattern.part, 0, box, rules));
          expect(pattern.counts.length).toBeGreaterThan(0);
          const faults = layoutFaults(layOut(pattern, stock, count, problem), stock, problem);
          expect(faults.filter((fault) => !fault.includes('stage 0 is too long'))).toEqual([]);
        }
        if (demand.some((copies, i) => copies < before[i])) dropped++;
      }),
      { numRuns: 300 },
    );
    expect(dropped).toBeGreaterThan(100);
  });
});
