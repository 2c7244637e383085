import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legal } from '../pattern/legal.js';
import type { Part, Pattern } from '../pattern/part.js';
import { inOrder, partKey } from '../pattern/pattern-key.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { CuttingProblem, Stock } from '../problem.js';
import { randomPattern } from '../random-pattern.test.support.js';
import { layOut } from './lay-out.js';
import { layoutFaults } from './replay.test.support.js';

const lay = (piece: number): Part => ({ kind: 'lay', piece, turned: false });

/** Worked by hand: see the numbers beside each check. */
const sheet: Stock = {
  kind: 'sheet',
  id: 'sheet',
  length: 100,
  width: 50,
  price: 900,
  onHand: 0,
  canBuy: 'any',
};
const problem: CuttingProblem = {
  pieces: [
    { id: 'lid', length: 30, width: 20, quantity: 2, mayTurn: false },
    { id: 'bar', length: 40, width: 15, quantity: 2, mayTurn: false },
  ],
  stock: [sheet],
  shear: { firstCut: 'along', kerf: 2, trim: 3 },
  keep: [{ leastLength: 30, leastWidth: 10, coinsPerMillion: 100_000, trouble: 5 }],
};
// Usable: 94 x 44 from (3, 3); gross 96 x 46. Strips of 17 and 22 gross, in the wrong order.
const pattern: Pattern = {
  stockClass: 0,
  counts: [
    [0, 1],
    [1, 3],
  ],
  kept: 0,
  part: {
    kind: 'split',
    cuts: 'along',
    parts: [
      {
        extent: 17,
        part: {
          kind: 'split',
          cuts: 'across',
          parts: [
            { extent: 42, part: lay(1) },
            { extent: 42, part: lay(1) },
          ],
        },
      },
      {
        extent: 22,
        part: {
          kind: 'split',
          cuts: 'across',
          parts: [
            { extent: 32, part: lay(0) },
            { extent: 42, part: lay(1) },
          ],
        },
      },
    ],
  },
};

describe('layOut', () => {
  it('draws a sheet worked out by hand', () => {
    const layout = layOut(pattern, sheet, 1, problem);
    expect(layout.pieces).toEqual([
      { piece: 'bar', x: 3, y: 3, length: 40, width: 15, turned: false },
      { piece: 'lid', x: 45, y: 3, length: 30, width: 20, turned: false },
      { piece: 'bar', x: 3, y: 25, length: 40, width: 15, turned: false },
      { piece: 'bar', x: 45, y: 25, length: 40, width: 15, turned: false },
    ]);
    expect(layout.cuts.map(({ stage, x1, y1, x2, y2 }) => [stage, x1, y1, x2, y2])).toEqual([
      [0, 1, 0, 1, 50],
      [0, 97, 0, 97, 50],
      [0, 3, 1, 97, 1],
      [0, 3, 47, 97, 47],
      [1, 3, 23, 97, 23],
      [1, 3, 40, 97, 40],
      // Bars are 40 long: three cuts of one setting, whichever strip they are in.
      [2, 43, 3, 43, 23],
      [2, 43, 25, 43, 40],
      [2, 85, 25, 85, 40],
      [2, 75, 3, 75, 23],
      [3, 3, 18, 43, 18],
    ]);
    expect(layout.remnants).toEqual([
      // 47 - 42 = 5 wide: too narrow for the rack.
      { x: 3, y: 42, length: 94, width: 5, keep: false, value: 0 },
      // 97 - 77 = 20 long: too short.
      { x: 77, y: 3, length: 20, width: 20, keep: false, value: 0 },
      // 20 beyond 15 and a kerf of 2.
      { x: 3, y: 20, length: 40, width: 3, keep: false, value: 0 },
      { x: 87, y: 25, length: 10, width: 15, keep: false, value: 0 },
    ]);
    expect(layoutFaults(layout, sheet, problem)).toEqual([]);
  });

  it('values what goes to the rack', () => {
    const part: Part = { kind: 'split', cuts: 'along', parts: [{ extent: 22, part: lay(0) }] };
    const layout = layOut({ ...pattern, part }, sheet, 1, problem);
    // 94 x 22 above: 2068 * 0.1 = 206.8, down to 206, less 5. 62 x 20 beside: 124 - 5.
    expect(layout.remnants.map(({ keep, value }) => [keep, value])).toEqual([
      [true, 201],
      [true, 119],
    ]);
  });

  it('makes no cut where a slice is all there is, and leaves no metal within a kerf', () => {
    const bar = { kind: 'offcut', id: 'bar', length: 43, width: 15 } as const;
    const part: Part = {
      kind: 'split',
      cuts: 'along',
      parts: [
        {
          extent: 17,
          part: { kind: 'split', cuts: 'across', parts: [{ extent: 42, part: lay(1) }] },
        },
      ],
    };
    const layout = layOut({ ...pattern, part }, bar, 1, problem);
    // The blade goes over the edge: 3 ticks beyond the piece, 2 of them dust, 1 left.
    expect(layout.cuts).toEqual([{ stage: 2, x1: 40, y1: 0, x2: 40, y2: 15 }]);
    expect(layout.remnants).toEqual([{ x: 42, y: 0, length: 1, width: 15, keep: false, value: 0 }]);
    const short = layOut({ ...pattern, part }, { ...bar, length: 42 }, 1, problem);
    expect(short.cuts).toHaveLength(1);
    expect(short.remnants).toEqual([]);
    expect(layOut({ ...pattern, part }, { ...bar, length: 40 }, 1, problem).cuts).toEqual([]);
  });

  it('refuses what is larger than the stock', () => {
    const small = { kind: 'offcut', id: 'small', length: 70, width: 60 } as const;
    expect(() => layOut(pattern, small, 1, problem)).toThrow("larger than 'small'");
  });

  it('covers every stock exactly, in cuts that can be made where the pattern is legal', () => {
    const seen = { legal: 0, not: 0 };
    fc.assert(
      fc.property(randomPattern(), ({ problem, stock, rules, box, part }) => {
        const pattern = patternOf(part, 0, box, rules);
        const layout = layOut(pattern, stock, 1, problem);
        const faults = layoutFaults(layout, stock, problem).filter(
          // Trims of the edges are a matter of the stock, not of the pattern.
          (fault) => !fault.includes('of stage 0 is too long'),
        );
        const good = legal(part, box, rules);
        seen[good ? 'legal' : 'not']++;
        if (good) expect(faults).toEqual([]);
        else {
          expect(faults).not.toEqual([]);
          expect(
            faults.filter(
              (fault) => !/too long|too narrow|no stage|trimmed|trims no|wrong way/.test(fault),
            ),
          ).toEqual([]);
        }
        const counts = new Map<string, number>();
        for (const { piece } of layout.pieces) counts.set(piece, (counts.get(piece) ?? 0) + 1);
        expect(pattern.counts.map(([piece, copies]) => [problem.pieces[piece].id, copies])).toEqual(
          [...counts].sort(),
        );
        expect(pattern.kept).toBe(layout.remnants.reduce((sum, { value }) => sum + value, 0));
      }),
      { numRuns: 3000 },
    );
    expect(seen.legal).toBeGreaterThan(500);
    expect(seen.not).toBeGreaterThan(500);
  });
});

describe('the key of a pattern', () => {
  it('is the same however the slices come, and its order changes nothing but the order', () => {
    const turnedRound = (part: Part): Part =>
      part.kind === 'lay'
        ? part
        : {
            ...part,
            parts: [...part.parts].reverse().map((slice) => ({
              ...slice,
              part: turnedRound(slice.part),
            })),
          };
    fc.assert(
      fc.property(randomPattern(), ({ rules, box, part }) => {
        expect(partKey(turnedRound(part))).toBe(partKey(part));
        expect(inOrder(turnedRound(part))).toEqual(inOrder(part));
        const before = patternOf(part, 0, box, rules);
        expect(patternOf(inOrder(part), 0, box, rules)).toEqual({ ...before, part: inOrder(part) });
      }),
    );
  });

  it('tells patterns apart that differ', () => {
    const split = (cuts: 'along' | 'across', ...parts: readonly Part[]): Part => ({
      kind: 'split',
      cuts,
      parts: parts.map((part) => ({ extent: 5, part })),
    });
    const keys = [
      split('along', lay(0)),
      split('across', lay(0)),
      split('along', lay(0), lay(0)),
      split('along', lay(0), lay(1)),
      split('along', split('across', lay(0))),
      split('along', { ...lay(0), turned: true } as Part),
      lay(0),
      split('along'),
    ].map(partKey);
    expect(new Set(keys).size).toBe(keys.length);
    expect(partKey(split('along'))).toBe(partKey(split('across')));
  });
});
