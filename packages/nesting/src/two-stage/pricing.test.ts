import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingProblem } from '../problem.js';
import { randomProblem } from '../random-problem.test.support.js';
import { stockClasses } from '../stock-classes.js';
import { pieceCounts } from './linear-master.js';
import { Pricing } from './pricing.js';
import { stripFamilies } from './strip-families.js';

/** The best worth of one sheet cut with its first cuts in one direction. */
function bestWorth(
  sheet: readonly [number, number],
  pieces: readonly (readonly [length: number, width: number, value: number])[],
  firstCut: 'along' | 'across',
  mayTurn = false,
): number {
  const problem: CuttingProblem = {
    pieces: pieces.map(([length, width], i) => ({
      id: `${i}`,
      length,
      width,
      quantity: 1000,
      mayTurn,
    })),
    stock: [
      {
        kind: 'sheet',
        id: 's',
        length: sheet[0],
        width: sheet[1],
        price: 1,
        onHand: 0,
        canBuy: 'any',
      },
    ],
    shear: { firstCut },
  };
  const faces = stripFamilies(problem, stockClasses(problem));
  return new Pricing(problem, faces).price(pieces.map(([, , value]) => value)).faceWorth[0];
}

describe('Pricing', () => {
  // J.E. Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting",
  // JORS 36 (1985) 297-306, OR-Library instance gcut1; value = area. 56460 fixed and
  // 58136 turned are the published optima for guillotine cuts of any number of
  // stages (Cintra et al. 2008, EJOR 191, 61-85); two stages reach them along the
  // length. 53808 across was recomputed from the same data by exact integer programming.
  const gcut1 = [
    [167, 184],
    [114, 118],
    [167, 152],
    [83, 140],
    [70, 86],
    [143, 166],
    [120, 160],
    [66, 148],
    [87, 141],
    [69, 165],
  ].map(([length, width]) => [length, width, length * width] as const);

  it.each([
    ['along', false, 56460],
    ['across', false, 53808],
    ['along', true, 58136],
    ['across', true, 58136],
  ] as const)('gcut1 with strips %s, turning %s, is worth %d', (firstCut, mayTurn, worth) => {
    expect(bestWorth([250, 250], gcut1, firstCut, mayTurn)).toBe(worth);
  });

  // Christofides and Whitlock 1977, instance 1 (data from memory). Without limits on
  // the number of each piece the published optimum for guillotine cuts of any number of
  // stages is 249 (Hifi and Zissimopoulos, EJOR 91 (1996) 553-564); in two stages 240
  // and 248, recomputed by exact integer programming.
  const cgcut1 = [
    [8, 4, 66],
    [3, 7, 35],
    [8, 2, 24],
    [3, 4, 17],
    [3, 3, 11],
    [3, 2, 8],
    [2, 1, 2],
  ] as const;

  it('cgcut1 stays below its optimum of many stages', () => {
    expect(bestWorth([15, 10], cgcut1, 'along')).toBe(240);
    expect(bestWorth([15, 10], cgcut1, 'across')).toBe(248);
  });

  it('returns patterns that fit, whose pieces are worth what it says', () => {
    fc.assert(
      fc.property(
        randomProblem({ pieceTypes: 5, quantity: 6, sheetSizes: 2, offcuts: 1, side: 20 }),
        fc.array(fc.nat(50), { minLength: 5, maxLength: 5 }),
        (problem, values) => {
          const classes = stockClasses(problem);
          const faces = stripFamilies(problem, classes);
          const priced = new Pricing(problem, faces).price(values.slice(0, problem.pieces.length));
          faces.faces.forEach((face, index) => {
            const cut = priced.cut(index);
            const family = faces.families[face.family];
            const breadth = cut.strips.reduce(
              (sum, [strip, count]) => sum + family.widths[strip.width] * count,
              0,
            );
            expect(breadth).toBeLessThanOrEqual(face.breadth);
            for (const [strip] of cut.strips) {
              const lays = strip.lays.map(([lay, count]) => ({ ...family.lays[lay], count }));
              const length = lays.reduce((sum, lay) => sum + lay.along * lay.count, 0);
              expect(length).toBeLessThanOrEqual(family.length);
              expect(lays.every((lay) => lay.across <= family.widths[strip.width])).toBe(true);
            }
            const worth = [...pieceCounts(faces, cut)].reduce(
              (sum, [piece, count]) => sum + values[piece] * count,
              0,
            );
            expect(worth).toBe(priced.faceWorth[index]);
          });
        },
      ),
    );
  });
});
