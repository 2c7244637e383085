/**
 * Sizes in a row, asked for the first from some place on that is no larger than a limit: a tree of the
 * least of each half, so that looking costs no more than the depth of it.
 */
export class FirstWithin {
  /** Least size below each node; the leaves begin at `#leaves`. */
  readonly #least: Float64Array;
  readonly #leaves: number;

  constructor(sizes: readonly number[]) {
    let leaves = 1;
    while (leaves < sizes.length) leaves *= 2;
    this.#leaves = leaves;
    this.#least = new Float64Array(2 * leaves).fill(Number.POSITIVE_INFINITY);
    this.#least.set(sizes, leaves);
    for (let node = leaves - 1; node > 0; node--) this.#pull(node);
  }

  /** Takes a size out. */
  remove(place: number): void {
    let node = this.#leaves + place;
    this.#least[node] = Number.POSITIVE_INFINITY;
    for (node >>= 1; node > 0; node >>= 1) this.#pull(node);
  }

  /** @returns the first place from `from` on with a size of at most so much, or -1 */
  from(from: number, atMost: number): number {
    const least = this.#least;
    if (from >= this.#leaves) return -1;
    let node = this.#leaves + from;
    while (!(least[node] <= atMost)) {
      // Up while it is a right half, then to the half beside it.
      while (node % 2 === 1) node >>= 1;
      if (node === 0) return -1;
      node++;
    }
    while (node < this.#leaves) node = least[2 * node] <= atMost ? 2 * node : 2 * node + 1;
    return node - this.#leaves;
  }

  #pull(node: number): void {
    this.#least[node] = Math.min(this.#least[2 * node], this.#least[2 * node + 1]);
  }
}
