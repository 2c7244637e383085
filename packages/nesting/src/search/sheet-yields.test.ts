import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ListedStrip } from '../pattern/strip-lister.js';
import type { CuttingProblem } from '../problem.js';
import { type Features, randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { listedPatterns } from '../two-stage/listed-patterns.test.support.js';
import { PieceNumbers } from './piece-numbers.js';
import { sheetYields } from './sheet-yields.js';
import { Steps } from './steps.js';

const ENDLESS = { left: () => 1 };

/** The yields of every class within the gap, and all patterns there are. */
function yieldsOf(problem: CuttingProblem, values: readonly number[], gap: number, steps = 1e6) {
  const listed = listedPatterns(problem, values, gap);
  const { demand, faces, limits, worth } = listed;
  const numbers = new PieceNumbers(demand);
  const yields = worth.map((best, g) => {
    const own = faces.filter(({ box }) => box === g);
    const request = { faces: own, demand, numbers, values, coin: 1, best, gap, limits };
    return sheetYields({ ...request, steps: new Steps(steps, ENDLESS) });
  });
  return { ...listed, numbers, yields };
}

const values = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 4, maxLength: 4 });
const gaps = fc.constantFrom(0, 3, 10, 1000);

/** Checks what is listed against every cut, and counts what was seen. */
function check(features: Features, seed: number, sure: boolean) {
  const seen = { patterns: 0, left: 0, yields: 0 };
  fc.assert(
    fc.property(randomOfKind(features, SMALL), values, gaps, (problem, values, gap) => {
      const { patterns, yields, numbers, lister, worth } = yieldsOf(problem, values, gap);
      for (const { pattern, short } of patterns) {
        if (short > gap) {
          seen.left++;
          continue;
        }
        seen.patterns++;
        const pieces = numbers.of(pattern.counts);
        const found = yields[pattern.stockClass]?.find((one) => one.pieces === pieces);
        expect(found?.loss, `${pattern.counts}`).toBeLessThanOrEqual(short);
      }
      yields.forEach((own, g) => {
        for (const { pieces, loss, face, strips } of own ?? []) {
          const pattern = lister.pattern(face, strips);
          if (pattern === undefined) {
            expect(sure).toBe(false);
            continue;
          }
          seen.yields++;
          expect(numbers.of(pattern.counts)).toBe(pieces);
          const total = pattern.counts.reduce(
            (sum, [piece, copies]) => sum + values[piece] * copies,
            pattern.kept,
          );
          expect(total).toBe(worth[g] - loss);
          expect(loss).toBeLessThanOrEqual(gap);
        }
      });
    }),
    { numRuns: 300, seed },
  );
  expect(seen.patterns).toBeGreaterThan(300);
  expect(seen.left).toBeGreaterThan(300);
  expect(seen.yields).toBeGreaterThan(300);
}

describe('sheetYields', () => {
  it('lists, in the way that loses least, all that trying every cut can yield within the gap', () => {
    check({ keep: true }, 3, true);
  });

  it('does so where strips may be too narrow, and cuts too long', () => {
    check({ keep: true, narrowestStrip: true, longestCut: true }, 4, false);
  });

  it('lists every lot of pieces once, the least loss first', () => {
    fc.assert(
      fc.property(randomOfKind({ keep: true }, SMALL), values, gaps, (problem, values, gap) => {
        for (const own of yieldsOf(problem, values, gap).yields) {
          const losses = own?.map(({ loss }) => loss) ?? [];
          expect(losses).toEqual([...losses].sort((a, b) => a - b));
          expect(new Set(own?.map(({ pieces }) => pieces)).size).toBe(losses.length);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('lets a strip that stretches take up what is too narrow to be left', () => {
    const strip = (stretches: boolean): ListedStrip => ({
      box: 0,
      cuts: 'along',
      extent: 4,
      part: { kind: 'lay', piece: 0, turned: false },
      kept: 0,
      counts: [[0, 1]],
      stretches,
    });
    const rests = [
      { extent: 0, kept: 0 },
      { extent: 3, kept: 0 },
    ];
    const yields = (strips: readonly ListedStrip[]) =>
      sheetYields({
        faces: [{ box: 0, cuts: 'along', breadth: 10, strips, rests }],
        demand: [2],
        numbers: new PieceNumbers([2]),
        values: [5],
        coin: 1,
        best: 10,
        gap: 10,
        limits: { kerf: 0, longestCut: 20, narrowest: 3 },
        steps: new Steps(1000, ENDLESS),
      })?.map(({ pieces, loss }) => [pieces, loss]);
    // One leaves 6 of 10; two leave 2, which the shear cannot hold.
    expect(yields([strip(false)])).toEqual([[1, 5]]);
    expect(yields([strip(false), strip(true)])).toEqual([
      [2, 0],
      [1, 5],
    ]);
  });

  it('gives up where the steps run out', () => {
    const problem: CuttingProblem = {
      pieces: [{ id: 'a', length: 4, width: 3, quantity: 6, mayTurn: true }],
      stock: [
        { kind: 'sheet', id: 's', length: 12, width: 10, price: 90, onHand: 0, canBuy: 'any' },
      ],
      shear: { firstCut: 'either', stages: 2 },
    };
    const [all] = yieldsOf(problem, [10], 1000).yields;
    // One to six of them.
    expect(all?.map(({ pieces }) => pieces).sort()).toEqual([1, 2, 3, 4, 5, 6]);
    expect(yieldsOf(problem, [10], 1000, 5).yields).toEqual([undefined]);
  });
});
