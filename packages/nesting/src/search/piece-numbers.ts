/** Sums are exact below this. */
const EXACT = 2 ** 53;

/**
 * So many of every piece as one whole number, its digits in places of different bases: the
 * numbers of two lots of pieces add up to that of both together, as long as they are no more
 * than the demand.
 */
export class PieceNumbers {
  readonly #demand: readonly number[];
  /** What one more of each piece adds. */
  readonly #steps: readonly number[];
  /** There are so many numbers, from 0 on. */
  readonly size: number;

  constructor(demand: readonly number[]) {
    this.#demand = demand;
    let size = 1;
    this.#steps = demand.map((quantity) => {
      const step = size;
      size *= quantity + 1;
      return step;
    });
    this.size = size;
  }

  /** Whether numbers up to so many times the largest are exact. */
  exact(times: number): boolean {
    return this.size * times < EXACT;
  }

  /** The number of the whole demand. */
  get all(): number {
    return this.size - 1;
  }

  of(counts: readonly (readonly [number, number])[]): number {
    return counts.reduce((sum, [piece, copies]) => sum + copies * this.#steps[piece], 0);
  }

  /** Copies of each piece. */
  copies(number: number): readonly number[] {
    return this.#demand.map(
      (quantity, piece) => Math.floor(number / this.#steps[piece]) % (quantity + 1),
    );
  }
}
