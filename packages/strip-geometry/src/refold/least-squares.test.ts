import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { SquaresSum } from './least-squares.js';

interface Row {
  readonly row: readonly number[];
  readonly target: number;
  readonly weight: number;
}

/** Rows in three unknowns; three of them hold the unknowns themselves, so that the least is one. */
const anyRows = fc
  .array(
    fc.record({
      row: fc.tuple(between(-5, 5), between(-5, 5), between(-5, 5)),
      target: between(-10, 10),
      weight: between(0.1, 3),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((rows): Row[] => [
    ...rows,
    ...[0, 1, 2].map((index) => ({
      row: [0, 1, 2].map((column) => (column === index ? 1 : 0)),
      target: 0.4,
      weight: 0.5,
    })),
  ]);

function sumOf(rows: readonly Row[]): SquaresSum {
  const sum = new SquaresSum(3);
  for (const { row, target, weight } of rows) {
    sum.add(Float64Array.from(row), target, weight);
  }
  return sum;
}

function cost(rows: readonly Row[], x: ArrayLike<number>): number {
  return rows.reduce((total, { row, target, weight }) => {
    const value = row.reduce((sum, entry, index) => sum + entry * (x[index] ?? 0), 0);
    return total + weight * (value - target) ** 2;
  }, 0);
}

test('nothing near the solution costs less', () => {
  fc.assert(
    fc.property(anyRows, fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1)), (rows, off) => {
      const best = sumOf(rows).least();
      const other = best.map((value, index) => value + (off[index] ?? 0));
      expect(cost(rows, other)).toBeGreaterThanOrEqual(cost(rows, best) * (1 - 1e-9) - 1e-9);
    }),
  );
});

test('whole unknowns are whole, and the others make the best of them', () => {
  fc.assert(
    fc.property(anyRows, between(-1, 1), (rows, off) => {
      const found = sumOf(rows).least(1);
      expect(Number.isInteger(found[1])).toBe(true);
      expect(Number.isInteger(found[2])).toBe(true);
      const other = [(found[0] ?? 0) + off, found[1] ?? 0, found[2] ?? 0];
      expect(cost(rows, other)).toBeGreaterThanOrEqual(cost(rows, found) * (1 - 1e-9) - 1e-9);
    }),
  );
});

// By hand: x + y should be 1, and x - y 0, the sum far more strictly. Both unknowns are one half;
// rounding each by itself would give 1 and 1 and a sum of 2.
test('what rounding one unknown leaves is taken up by the next', () => {
  const sum = new SquaresSum(2);
  sum.add(Float64Array.from([1, 1]), 1, 100);
  sum.add(Float64Array.from([1, -1]), 0, 1);
  const [x = 0, y = 0] = sum.least(0);
  expect(x + y).toBe(1);
});
