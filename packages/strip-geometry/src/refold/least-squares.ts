/**
 * A sum of squares of linear expressions in some unknowns, each expression
 * with a weight: sum of w (a . x - b)^2. Gathered row by row as the normal equations.
 */
export class SquaresSum {
  readonly size: number;
  private readonly matrix: Float64Array;
  private readonly right: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.matrix = new Float64Array(size * size);
    this.right = new Float64Array(size);
  }

  /** Adds weight * (row . x - target)^2; the row's entries by their unknown. */
  add(row: Float64Array, target: number, weight: number): void {
    const { size, matrix, right } = this;
    for (let i = 0; i < size; i++) {
      const a = weight * (row[i] ?? 0);
      if (a === 0) continue;
      right[i] = (right[i] ?? 0) + a * target;
      for (let j = 0; j <= i; j++) {
        const at = i * size + j;
        matrix[at] = (matrix[at] ?? 0) + a * (row[j] ?? 0);
      }
    }
  }

  /**
   * The unknowns that make the sum least. Those from `whole` on are whole
   * numbers: each, from the last to the first, is rounded to the nearest while
   * those before it may still take up what rounding leaves (Babai's nearest plane;
   * L. Babai, Combinatorica 6, 1986, from memory). Near the least sum that whole
   * numbers allow, though not always the least.
   */
  least(whole = this.size): Float64Array {
    const { size } = this;
    const lower = this.cholesky();
    // Solve lower * y = right; then lower^T x = y from the last unknown up.
    const y = Float64Array.from(this.right);
    for (let i = 0; i < size; i++) {
      let sum = y[i] ?? 0;
      for (let j = 0; j < i; j++) sum -= (lower[i * size + j] ?? 0) * (y[j] ?? 0);
      y[i] = sum / (lower[i * size + i] ?? 1);
    }
    const x = new Float64Array(size);
    for (let i = size - 1; i >= 0; i--) {
      let sum = y[i] ?? 0;
      for (let j = i + 1; j < size; j++) sum -= (lower[j * size + i] ?? 0) * (x[j] ?? 0);
      const best = sum / (lower[i * size + i] ?? 1);
      x[i] = i >= whole ? Math.round(best) : best;
    }
    return x;
  }

  /** The lower triangle L with L L^T equal to the matrix. */
  private cholesky(): Float64Array {
    const { size, matrix } = this;
    const lower = new Float64Array(size * size);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = matrix[i * size + j] ?? 0;
        for (let k = 0; k < j; k++) sum -= (lower[i * size + k] ?? 0) * (lower[j * size + k] ?? 0);
        lower[i * size + j] =
          i === j ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / (lower[j * size + j] ?? 1);
      }
    }
    return lower;
  }
}
