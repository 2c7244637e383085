/**
 * Solves the normal equations A x = b of a least-squares problem, `size` by
 * `size`, row by row, by Cholesky's method. Undefined where A is not positive
 * definite. `matrix` is overwritten.
 */
export function solvePositive(
  matrix: Float64Array,
  right: Float64Array,
  size: number,
): Float64Array | undefined {
  const at = (row: number, column: number) => matrix[row * size + column] ?? 0;
  for (let column = 0; column < size; column++) {
    let pivot = at(column, column);
    for (let k = 0; k < column; k++) {
      pivot -= at(column, k) ** 2;
    }
    if (!(pivot > 0)) {
      return undefined;
    }
    const root = Math.sqrt(pivot);
    matrix[column * size + column] = root;
    for (let row = column + 1; row < size; row++) {
      let sum = at(row, column);
      for (let k = 0; k < column; k++) {
        sum -= at(row, k) * at(column, k);
      }
      matrix[row * size + column] = sum / root;
    }
  }
  const solution = Float64Array.from(right);
  const value = (index: number) => solution[index] ?? 0;
  for (let row = 0; row < size; row++) {
    let sum = value(row);
    for (let k = 0; k < row; k++) {
      sum -= at(row, k) * value(k);
    }
    solution[row] = sum / at(row, row);
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = value(row);
    for (let k = row + 1; k < size; k++) {
      sum -= at(k, row) * value(k);
    }
    solution[row] = sum / at(row, row);
  }
  return solution;
}
