import { ArrowMatrix } from './arrow-matrix.js';

/** How often a column counts in each row, as [row, number], and what it loses by itself, at least 0. */
export interface EntropyColumn {
  readonly entries: readonly (readonly [number, number])[];
  readonly energy: number;
}

export interface SolveLimits {
  /** The step that Newton's method may be from the end, as half of its square in its own measure. */
  readonly near: number;
  readonly steps: number;
  /** Asked before each step; true gives up. */
  readonly over?: (() => boolean) | undefined;
}

/** Added to the diagonal, for rows that few columns reach. */
const RIDGE = 1e-9;
/** The share of the way to where a column would come for nothing that a step may take. */
const SHORT_OF_EDGE = 0.95;
/** Armijo's rule: the share of the promised gain that a step must bring, and the shortest step. */
const SHARE_OF_GAIN = 1e-4;
const SHORTEST_STEP = 1e-9;

/**
 * The most even plan: of all ways to give columns numbers, not below 0, whose sums over the
 * rows come to a right-hand side, that of the greatest entropy where each number is
 * distributed geometrically. Its entropy, less the half logarithm of a determinant, estimates
 * how many plans in whole numbers there are, and the expected numbers say where they lie
 * (Barvinok and Hartigan 2010, "Maximum entropy Gaussian approximations for the number of
 * integer points and volumes of polytopes").
 *
 * Solved by Newton's method on the dual: the sum of -log(1 - exp(-(energy + entries ·
 * multipliers))) over the columns, plus right-hand side · multipliers, is least. All its
 * values are upper bounds of the entropy.
 */
export class MaxEntropy {
  readonly columns: number;
  readonly rows: number;
  /** Of the rows; they must leave every active column a loss above 0 before solving. */
  readonly multipliers: Float64Array;
  /** Expected numbers of the columns, 0 for inactive ones, after solving. */
  readonly amounts: Float64Array;
  /** By column, 1 where it may be used. */
  readonly active: Uint8Array;
  readonly #start: Int32Array;
  readonly #row: Int32Array;
  readonly #count: Float64Array;
  readonly #energy: Float64Array;
  /** From this row on, rows are apart. */
  readonly #apart: number;
  /** For each row, its index among those that an active column reaches, or -1. */
  readonly #at: Int32Array;
  #size = 0;
  /** How many of those are not apart. */
  #dense = 0;
  #loss: Float64Array;
  #nextLoss: Float64Array;
  readonly #slope: Float64Array;
  readonly #matrix = new ArrowMatrix();

  /**
   * @param apart from this row on no column reaches two of the rows, which makes steps of
   *   Newton's method much quicker where these are most of the rows
   * @throws RangeError where a column does
   */
  constructor(rows: number, columns: readonly EntropyColumn[], apart = rows) {
    for (const { entries } of columns) {
      if (entries.filter(([row]) => row >= apart).length > 1) {
        throw new RangeError('A column reaches two rows that are said to be apart.');
      }
    }
    this.#apart = apart;
    this.rows = rows;
    this.columns = columns.length;
    this.multipliers = new Float64Array(rows);
    this.amounts = new Float64Array(columns.length);
    this.active = new Uint8Array(columns.length).fill(1);
    this.#at = new Int32Array(rows);
    this.#loss = new Float64Array(columns.length);
    this.#nextLoss = new Float64Array(columns.length);
    this.#slope = new Float64Array(columns.length);
    this.#energy = Float64Array.from(columns, ({ energy }) => energy);
    const entries = columns.flatMap((column) => column.entries);
    this.#row = Int32Array.from(entries, ([row]) => row);
    this.#count = Float64Array.from(entries, ([, count]) => count);
    this.#start = new Int32Array(columns.length + 1);
    columns.forEach((column, index) => {
      this.#start[index + 1] = this.#start[index] + column.entries.length;
    });
  }

  setEnergy(column: number, energy: number): void {
    this.#energy[column] = energy;
  }

  /** [row, number] of a column. */
  entriesOf(column: number): readonly (readonly [number, number])[] {
    const [from, to] = [this.#start[column], this.#start[column + 1]];
    return Array.from({ length: to - from }, (_, k) => [
      this.#row[from + k],
      this.#count[from + k],
    ]);
  }

  /**
   * Rows that no active column reaches are left out, whatever their right-hand side.
   * @returns the entropy; `undefined` where the multipliers leave a column no loss, where the
   *   numbers are beyond doubles, or where it is over before the end
   */
  solve(right: ArrayLike<number>, { near, steps, over }: SolveLimits): number | undefined {
    this.#numberRows();
    const { multipliers } = this;
    const [direction, gradient] = [new Float64Array(this.#size), new Float64Array(this.#size)];
    const tried = new Float64Array(this.rows);
    if (this.#lossesAt(multipliers) <= 0) return undefined;
    let entropy = this.#dual(this.#loss, multipliers, right);
    for (let step = 0; step < steps; step++) {
      if (over?.()) return undefined;
      this.#expect();
      this.#short(right, gradient);
      if (!this.#factor()) return undefined;
      direction.set(gradient);
      this.#matrix.solve(direction);
      const gain = direction.reduce((sum, value, at) => sum + value * gradient[at], 0);
      let length = this.#longestStep(direction);
      let next = Number.POSITIVE_INFINITY;
      for (; length > SHORTEST_STEP; length /= 2) {
        for (let row = 0; row < this.rows; row++) {
          const at = this.#at[row];
          tried[row] = multipliers[row] + (at < 0 ? 0 : length * direction[at]);
        }
        for (let column = 0; column < this.columns; column++) {
          this.#nextLoss[column] = this.#loss[column] + length * this.#slope[column];
        }
        next = this.#dual(this.#nextLoss, tried, right);
        if (next <= entropy - SHARE_OF_GAIN * length * gain) break;
      }
      if (length <= SHORTEST_STEP) break;
      entropy = next;
      multipliers.set(tried);
      [this.#loss, this.#nextLoss] = [this.#nextLoss, this.#loss];
      if (gain < near) break;
    }
    this.#expect();
    return entropy;
  }

  /**
   * How fast the multipliers of some rows grow with the right-hand sides of these rows: the
   * second derivatives of the entropy there, their signs changed. Rows one after another;
   * zeros where no active column reaches a row. To be asked after solving.
   */
  curvature(rows: readonly number[]): Float64Array {
    const curvature = new Float64Array(rows.length * rows.length);
    if (!this.#factor()) return curvature;
    const unit = new Float64Array(this.#size);
    rows.forEach((row, index) => {
      const at = this.#at[row];
      if (at < 0) return;
      unit.fill(0);
      unit[at] = 1;
      this.#matrix.solve(unit);
      rows.forEach((other, to) => {
        const there = this.#at[other];
        if (there >= 0) curvature[index * rows.length + to] = unit[there];
      });
    });
    return curvature;
  }

  #numberRows(): void {
    this.#at.fill(-1);
    for (let column = 0; column < this.columns; column++) {
      if (this.active[column] === 0) continue;
      for (let k = this.#start[column]; k < this.#start[column + 1]; k++) {
        this.#at[this.#row[k]] = 0;
      }
    }
    this.#size = 0;
    this.#dense = 0;
    for (let row = 0; row < this.rows; row++) {
      if (this.#at[row] < 0) continue;
      this.#at[row] = this.#size++;
      if (row < this.#apart) this.#dense = this.#size;
    }
  }

  /** @returns the least of all losses */
  #lossesAt(multipliers: Float64Array): number {
    let least = Number.POSITIVE_INFINITY;
    for (let column = 0; column < this.columns; column++) {
      if (this.active[column] === 0) continue;
      let loss = this.#energy[column];
      for (let k = this.#start[column]; k < this.#start[column + 1]; k++) {
        loss += multipliers[this.#row[k]] * this.#count[k];
      }
      this.#loss[column] = loss;
      least = Math.min(least, loss);
    }
    return least;
  }

  #dual(losses: Float64Array, multipliers: Float64Array, right: ArrayLike<number>): number {
    let sum = 0;
    for (let column = 0; column < this.columns; column++) {
      if (this.active[column] === 1) sum -= Math.log(-Math.expm1(-losses[column]));
    }
    for (let row = 0; row < this.rows; row++) {
      if (this.#at[row] >= 0) sum += multipliers[row] * right[row];
    }
    return sum;
  }

  #expect(): void {
    for (let column = 0; column < this.columns; column++) {
      this.amounts[column] = this.active[column] === 1 ? 1 / Math.expm1(this.#loss[column]) : 0;
    }
  }

  /** By how much the expected numbers exceed the right-hand side, in the rows that count. */
  #short(right: ArrayLike<number>, into: Float64Array): void {
    for (let row = 0; row < this.rows; row++) {
      if (this.#at[row] >= 0) into[this.#at[row]] = -right[row];
    }
    for (let column = 0; column < this.columns; column++) {
      const amount = this.amounts[column];
      if (amount === 0) continue;
      for (let k = this.#start[column]; k < this.#start[column + 1]; k++) {
        into[this.#at[this.#row[k]]] += this.#count[k] * amount;
      }
    }
  }

  /** The covariance of the rows' sums. */
  #factor(): boolean {
    const matrix = this.#matrix;
    matrix.reset(this.#dense, this.#size - this.#dense, RIDGE);
    for (let column = 0; column < this.columns; column++) {
      const variance = this.amounts[column] * (this.amounts[column] + 1);
      if (variance === 0) continue;
      for (let k = this.#start[column]; k < this.#start[column + 1]; k++) {
        const one = this.#at[this.#row[k]];
        const part = this.#count[k] * variance;
        for (let l = this.#start[column]; l <= k; l++) {
          const other = this.#at[this.#row[l]];
          matrix.add(Math.max(one, other), Math.min(one, other), part * this.#count[l]);
        }
      }
    }
    return matrix.factor();
  }

  /** Leaves how fast each loss changes in a direction in `#slope`. */
  #longestStep(direction: Float64Array): number {
    let longest = 1;
    for (let column = 0; column < this.columns; column++) {
      if (this.active[column] === 0) continue;
      let slope = 0;
      for (let k = this.#start[column]; k < this.#start[column + 1]; k++) {
        slope += this.#count[k] * direction[this.#at[this.#row[k]]];
      }
      this.#slope[column] = slope;
      if (slope < 0) longest = Math.min(longest, (-SHORT_OF_EDGE * this.#loss[column]) / slope);
    }
    return longest;
  }
}
