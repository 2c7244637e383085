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
  readonly #withOneMore: readonly (readonly number[])[];

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
    this.#withOneMore = counts.map((copies, number) =>
      steps.flatMap((step, piece) => (copies[piece] < most[piece] ? [number + step] : [])),
    );
    for (let a = 0; a < size; a++) {
      for (let b = 0; b < size; b++) {
        let sum = 0;
        for (let piece = 0; piece < steps.length; piece++) {
          const copies = counts[a][piece] + counts[b][piece];
          sum += steps[piece] * Math.min(most[piece], copies);
        }
        this.#sums[a * size + b] = sum;
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
    return this.#most.map(
      (most, piece) => Math.floor(combination / this.#steps[piece]) % (most + 1),
    );
  }

  /** The combinations with one copy more of some piece. */
  withOneMore(combination: number): readonly number[] {
    return this.#withOneMore[combination];
  }
}
