import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorInPlace, solveFactored } from './cholesky.js';

const SIZE = { min: 1, max: 14 };
const numbers = (count: number) =>
  fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: count, maxLength: count });
/** Positive definite: a matrix times its transpose, and something on the diagonal. */
const definite = fc.integer(SIZE).chain((size) =>
  fc
    .record({ size: fc.constant(size), root: numbers(size * size), right: numbers(size) })
    .map(({ root, right }) => {
      const matrix = Float64Array.from({ length: size * size }, (_, cell) => {
        const [row, column] = [Math.floor(cell / size), cell % size];
        let sum = row === column ? 0.5 : 0;
        for (let k = 0; k < size; k++) sum += root[row * size + k] * root[column * size + k];
        return sum;
      });
      return { size, matrix, right };
    }),
);

describe('Cholesky factor', () => {
  it('is that of the worked example in many textbooks (from memory)', () => {
    const matrix = Float64Array.from([4, 12, -16, 12, 37, -43, -16, -43, 98]);
    expect(factorInPlace(matrix, 3)).toBe(true);
    const lower = [0, 3, 4, 6, 7, 8].map((cell) => matrix[cell]);
    expect(lower).toEqual([2, 6, 1, -8, 5, 3]);
  });

  it('solves for any right-hand side', () => {
    fc.assert(
      fc.property(definite, ({ size, matrix, right }) => {
        const factor = matrix.slice();
        expect(factorInPlace(factor, size)).toBe(true);
        const found = Float64Array.from(right);
        solveFactored(factor, size, found);
        right.forEach((value, row) => {
          let sum = 0;
          for (let k = 0; k < size; k++) sum += matrix[row * size + k] * found[k];
          expect(sum).toBeCloseTo(value, 6);
        });
      }),
    );
  });

  it('reads the lower triangle only', () => {
    fc.assert(
      fc.property(definite, ({ size, matrix }) => {
        const spoilt = matrix.map((value, cell) =>
          cell % size > Math.floor(cell / size) ? Number.NaN : value,
        );
        expect(factorInPlace(spoilt, size)).toBe(true);
        expect(spoilt[(size - 1) * size]).not.toBeNaN();
      }),
    );
  });

  it('is refused where a matrix is not positive definite', () => {
    expect(factorInPlace(Float64Array.from([1, 2, 2, 1]), 2)).toBe(false);
    expect(factorInPlace(Float64Array.from([0]), 1)).toBe(false);
    expect(factorInPlace(Float64Array.from([Number.NaN]), 1)).toBe(false);
  });
});
