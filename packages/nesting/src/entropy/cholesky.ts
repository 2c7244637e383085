/**
 * Factors a symmetric positive definite matrix in place: L of L times its transpose then
 * stands in the lower triangle (Cholesky; Golub and Van Loan, "Matrix Computations", 4.2).
 * @param matrix its rows one after another; only the lower triangle is read
 * @returns false where it is not positive definite, as far as doubles tell; it is spoilt then
 */
export function factorInPlace(matrix: Float64Array, size: number): boolean {
  for (let column = 0; column < size; column++) {
    const at = column * size;
    let pivot = matrix[at + column];
    for (let k = 0; k < column; k++) pivot -= matrix[at + k] * matrix[at + k];
    if (!(pivot > 0)) return false;
    const root = Math.sqrt(pivot);
    matrix[at + column] = root;
    let row = column + 1;
    // Four rows at a time, so that each number of the pivot's row is read once for all of them.
    for (; row + 3 < size; row += 4) {
      const first = row * size;
      const [second, third, fourth] = [first + size, first + 2 * size, first + 3 * size];
      let sum1 = matrix[first + column];
      let sum2 = matrix[second + column];
      let sum3 = matrix[third + column];
      let sum4 = matrix[fourth + column];
      for (let k = 0; k < column; k++) {
        const value = matrix[at + k];
        sum1 -= matrix[first + k] * value;
        sum2 -= matrix[second + k] * value;
        sum3 -= matrix[third + k] * value;
        sum4 -= matrix[fourth + k] * value;
      }
      matrix[first + column] = sum1 / root;
      matrix[second + column] = sum2 / root;
      matrix[third + column] = sum3 / root;
      matrix[fourth + column] = sum4 / root;
    }
    for (; row < size; row++) {
      const from = row * size;
      let sum = matrix[from + column];
      for (let k = 0; k < column; k++) sum -= matrix[from + k] * matrix[at + k];
      matrix[from + column] = sum / root;
    }
  }
  return true;
}

/** Solves for one right-hand side in place, with the factor that `factorInPlace` left. */
export function solveFactored(factor: Float64Array, size: number, right: Float64Array): void {
  for (let row = 0; row < size; row++) {
    const at = row * size;
    let sum = right[row];
    for (let k = 0; k < row; k++) sum -= factor[at + k] * right[k];
    right[row] = sum / factor[at + row];
  }
  for (let row = size - 1; row >= 0; row--) {
    const value = right[row] / factor[row * size + row];
    right[row] = value;
    const at = row * size;
    for (let k = 0; k < row; k++) right[k] -= factor[at + k] * value;
  }
}
