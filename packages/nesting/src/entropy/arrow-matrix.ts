import { factorInPlace, solveFactored } from './cholesky.js';

/**
 * A symmetric positive definite matrix some of whose last rows are apart: none of them meets
 * another, so that they hold nothing but the diagonal and the columns of the rows before. Those
 * are taken out first, each at the cost of a square, and what is left is factored (Schur
 * complement; Golub and Van Loan, "Matrix Computations", 3.2).
 */
export class ArrowMatrix {
  /** Rows that are not apart. */
  #dense = 0;
  /** Rows that are not apart, one after another; only the lower triangle counts. */
  #block = new Float64Array(0);
  /** For each row apart, what it holds in the columns of the others, and on the diagonal. */
  #sides = new Float64Array(0);
  #diagonal = new Float64Array(0);

  /**
   * Sets everything to 0, but for what is added to the diagonal.
   * @param dense rows that are not apart
   * @param apart rows after them that are
   */
  reset(dense: number, apart: number, ridge: number): void {
    if (this.#dense !== dense || this.#diagonal.length !== apart) {
      this.#dense = dense;
      this.#block = new Float64Array(dense * dense);
      this.#sides = new Float64Array(apart * dense);
      this.#diagonal = new Float64Array(apart);
    }
    this.#block.fill(0);
    this.#sides.fill(0);
    this.#diagonal.fill(ridge);
    for (let row = 0; row < dense; row++) this.#block[row * dense + row] = ridge;
  }

  /** @param column no later than the row; where the row is apart, not another one apart */
  add(row: number, column: number, value: number): void {
    const dense = this.#dense;
    if (row < dense) this.#block[row * dense + column] += value;
    else if (column < dense) this.#sides[(row - dense) * dense + column] += value;
    else this.#diagonal[row - dense] += value;
  }

  /**
   * Takes the place of the matrix by its factor.
   * @returns false where it is not positive definite, as far as doubles tell; it is spoilt then
   */
  factor(): boolean {
    const [dense, block, sides] = [this.#dense, this.#block, this.#sides];
    for (let apart = 0; apart < this.#diagonal.length; apart++) {
      const pivot = this.#diagonal[apart];
      if (!(pivot > 0)) return false;
      const from = apart * dense;
      for (let row = 0; row < dense; row++) {
        const share = sides[from + row] / pivot;
        if (share === 0) continue;
        const at = row * dense;
        for (let column = 0; column <= row; column++) {
          block[at + column] -= share * sides[from + column];
        }
      }
    }
    return factorInPlace(block, dense);
  }

  /** Solves for one right-hand side in place, once factored. */
  solve(right: Float64Array): void {
    const [dense, sides, diagonal] = [this.#dense, this.#sides, this.#diagonal];
    for (let apart = 0; apart < diagonal.length; apart++) {
      const share = right[dense + apart] / diagonal[apart];
      if (share === 0) continue;
      const from = apart * dense;
      for (let row = 0; row < dense; row++) right[row] -= share * sides[from + row];
    }
    solveFactored(this.#block, dense, right);
    for (let apart = 0; apart < diagonal.length; apart++) {
      const from = apart * dense;
      let sum = right[dense + apart];
      for (let row = 0; row < dense; row++) sum -= sides[from + row] * right[row];
      right[dense + apart] = sum / diagonal[apart];
    }
  }
}
