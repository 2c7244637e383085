import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ArrowMatrix } from './arrow-matrix.js';

/**
 * A sum of squares of vectors, each of which reaches some of the dense rows and one row apart
 * at most: positive definite with a ridge, and no two rows apart meet.
 */
const vectors = fc
  .record({ dense: fc.integer({ min: 0, max: 5 }), apart: fc.integer({ min: 0, max: 6 }) })
  .filter(({ dense, apart }) => dense + apart > 0)
  .chain(({ dense, apart }) =>
    fc.record({
      dense: fc.constant(dense),
      apart: fc.constant(apart),
      vectors: fc.array(
        fc.record({
          inDense: fc.array(fc.integer({ min: -3, max: 3 }), {
            minLength: dense,
            maxLength: dense,
          }),
          at: fc.nat(Math.max(0, apart - 1)),
          inApart: fc.integer({ min: -3, max: 3 }),
        }),
        { maxLength: 12 },
      ),
      right: fc.array(fc.double({ min: -5, max: 5, noNaN: true }), {
        minLength: dense + apart,
        maxLength: dense + apart,
      }),
    }),
  );
const RIDGE: number = 0.5;

describe('arrow matrix', () => {
  it('solves for any right-hand side, once factored', () => {
    const seen = { apart: 0, both: 0 };
    const matrix = new ArrowMatrix();
    fc.assert(
      fc.property(vectors, ({ dense, apart, vectors: all, right }) => {
        const size = dense + apart;
        const full = Array.from({ length: size }, (_, row) =>
          Array.from({ length: size }, (_, column) => (row === column ? RIDGE : 0)),
        );
        // The same one again and again: what was in it before must not matter.
        matrix.reset(dense, apart, RIDGE);
        for (const { inDense, at, inApart } of all) {
          const vector = new Array<number>(size).fill(0);
          inDense.forEach((value, row) => {
            vector[row] = value;
          });
          if (apart > 0) vector[dense + at] = inApart;
          vector.forEach((one, row) => {
            vector.slice(0, row + 1).forEach((other, column) => {
              if (one * other !== 0) matrix.add(row, column, one * other);
            });
            vector.forEach((other, column) => {
              full[row][column] += one * other;
            });
          });
        }
        expect(matrix.factor()).toBe(true);
        const found = Float64Array.from(right);
        matrix.solve(found);
        full.forEach((row, index) => {
          const sum = row.reduce((before, value, column) => before + value * found[column], 0);
          expect(sum).toBeCloseTo(right[index], 7);
        });
        if (apart > 0) seen.apart++;
        if (apart > 1 && dense > 1) seen.both++;
      }),
    );
    expect(seen.apart).toBeGreaterThan(50);
    expect(seen.both).toBeGreaterThan(30);
  });

  it('is refused where it is not positive definite', () => {
    const matrix = new ArrowMatrix();
    matrix.reset(1, 1, 0);
    matrix.add(0, 0, 1);
    matrix.add(1, 0, 2);
    matrix.add(1, 1, 1);
    expect(matrix.factor()).toBe(false);
    matrix.reset(1, 1, 0);
    matrix.add(0, 0, 1);
    expect(matrix.factor()).toBe(false);
  });
});
