import { describe, expect, it } from 'vitest';
import { barProblem, planned, sheet } from './plan-cutting.test.support.js';
import type { CuttingProblem } from './problem.js';
import { PAPER_ROLLS } from './published-examples.test.support.js';

type Lengths = readonly (readonly [length: number, quantity: number])[];

describe('planCutting against published examples of one-dimensional stock cutting', () => {
  it.each<[string, number, Lengths, number]>([
    // Encyclopedic worked example of the one-dimensional cutting stock problem
    // (linear bound 72.917).
    ['the paper rolls of 5600', 5600, PAPER_ROLLS, 73],
    // V. Chvatal, Linear Programming, 1983, p. 195 (data published; 453 recomputed).
    [
      'the rolls of 100 inches',
      100,
      [
        [45, 97],
        [36, 610],
        [31, 395],
        [14, 211],
      ],
      453,
    ],
    // W. Winston, Operations Research, chapter on column generation (data published; 19 recomputed).
    [
      'the boards of 17 feet',
      17,
      [
        [3, 25],
        [5, 20],
        [9, 15],
      ],
      19,
    ],
    // Fourer, Gay, Kernighan, the AMPL book, cutting-stock example (from memory; 47 recomputed).
    [
      'the rolls of 110',
      110,
      [
        [20, 48],
        [45, 35],
        [50, 24],
        [55, 10],
        [75, 8],
      ],
      47,
    ],
    // Textbook exercises (data published; optima recomputed by exact integer programming).
    [
      'a cut without waste',
      100,
      [
        [20, 100],
        [30, 120],
        [40, 40],
        [50, 20],
      ],
      82,
    ],
    [
      'the lumber yard',
      25,
      [
        [7, 5000],
        [9, 1200],
        [11, 300],
      ],
      2167,
    ],
    [
      'the paper mill',
      100,
      [
        [60, 30],
        [48, 50],
        [36, 25],
        [24, 90],
      ],
      77,
    ],
    [
      'the smallest sample',
      10,
      [
        [7, 2],
        [5, 2],
        [3, 4],
      ],
      4,
    ],
  ])('%s', async (_, length, pieces, sheets) => {
    const plan = await planned(barProblem(length, pieces));
    expect(plan.cost).toBe(sheets);
    expect(plan.bound).toEqual({ cost: sheets, proven: true });
  });

  it('reckons with the kerf of a saw between two pieces, not beyond the last', async () => {
    // Two of 50 and the kerf between them need 101.
    const bars = barProblem(100, [[50, 4]]);
    const sawn = (length: number): CuttingProblem => ({
      ...bars,
      stock: [sheet('bar', length, 1, { price: 1 })],
      shear: { ...bars.shear, kerf: 1 },
    });
    expect((await planned(bars)).cost).toBe(2);
    expect((await planned(sawn(100))).cost).toBe(4);
    expect((await planned(sawn(101))).cost).toBe(2);
  });
});
