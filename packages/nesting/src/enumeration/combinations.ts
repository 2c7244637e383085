/**
 * Combinations of pieces written as one whole number each: so many of every piece,
 * up to a most, as the digits of a number whose places have different bases.
 */
export class Combinations {
  /** How many there are. */
  readonly size: number;
  readonly #most: readonly number[];
  /** What one more of each piece adds to the number. */
  readonly #steps: readonly number[];
  /** Of two combinations, at `a * size + b`: both together. */
  readonly #sums: Int32Array;

  /** @param most copies of each piece that count; more of it count as so many */
  constructor(most: readonly number[]) {
    this.#most = most;
    const steps: number[] = [];
    let size = 1;
    for (const copies of most) {
      steps.push(size);
      size *= copies + 1;
    }
    this.#steps = steps;
    this.size = size;
    this.#sums = new Int32Array(size * size);
    const counts = Array.from({ length: size }, (_, number) => this.counts(number));
    for (const [a, one] of counts.entries()) {
      for (const [b, other] of counts.entries()) {
        this.#sums[a * size + b] = steps.reduce(
          (sum, step, piece) => sum + step * Math.min(most[piece], one[piece] + other[piece]),
          0,
        );
      }
    }
  }

  /** The combination of one copy of a piece. */
  one(piece: number): number {
    return this.#most[piece] > 0 ? this.#steps[piece] : 0;
  }

  /** Both together, what exceeds the most of a piece not counted. */
  sum(a: number, b: number): number {
    return this.#sums[a * this.size + b];
  }

  /** Copies of each piece. */
  counts(combination: number): readonly number[] {
    return this.#most.map((most, piece) => this.#digit(combination, piece, most));
  }

  /** The combinations with one copy more of some piece. */
  withOneMore(combination: number): readonly number[] {
    return this.#steps.flatMap((step, piece) =>
      this.#digit(combination, piece, this.#most[piece]) < this.#most[piece]
        ? [combination + step]
        : [],
    );
  }

  #digit(combination: number, piece: number, most: number): number {
    return Math.floor(combination / this.#steps[piece]) % (most + 1);
  }
}
