/** Sums above this are rounded by the common divisor alone. */
const TABLE_LIMIT = 4_000_000;

/**
 * Costs that some number of priced things can add up to. A bound between two
 * of them can be raised to the upper one.
 */
export class ReachableCosts {
  readonly #divisor: number;
  /** Prices as multiples of the divisor. */
  readonly #steps: readonly number[];
  /** Which multiples of the divisor are sums of prices, as far as they were asked for. */
  readonly #sums: Uint8Array;
  /** Multiples below this one are known. */
  #known = 0;

  /**
   * @param prices whole numbers, at least 0
   * @param most sums are told apart up to this; beyond, or above four million
   *   steps, only the prices' common divisor is used
   */
  constructor(prices: readonly number[], most: number) {
    const positive = [...new Set(prices)].filter((price) => price > 0);
    this.#divisor = positive.reduce(greatestCommonDivisor, 0);
    const steps = this.#divisor === 0 ? 0 : Math.floor(most / this.#divisor);
    this.#sums = new Uint8Array(steps > TABLE_LIMIT ? 0 : steps + 1);
    this.#steps = positive.map((price) => price / this.#divisor);
  }

  /** The least reachable cost that is at least `cost`, or `Infinity` where there is none. */
  atLeast(cost: number): number {
    if (cost <= 0) return 0;
    if (this.#divisor === 0) return Number.POSITIVE_INFINITY;
    let sum = Math.ceil(cost / this.#divisor);
    while (sum < this.#sums.length && !this.#isSum(sum)) sum++;
    return sum * this.#divisor;
  }

  /** The greatest reachable cost below `cost`, or -1 where there is none. */
  below(cost: number): number {
    if (cost <= 0) return -1;
    if (this.#divisor === 0) return 0;
    let sum = Math.ceil(cost / this.#divisor) - 1;
    if (sum < this.#sums.length) while (sum > 0 && !this.#isSum(sum)) sum--;
    return sum * this.#divisor;
  }

  /** Of a multiple of the divisor within the table. */
  #isSum(sum: number): boolean {
    for (; this.#known <= sum; this.#known++) {
      const known = this.#known;
      const reached =
        known === 0 || this.#steps.some((step) => step <= known && this.#sums[known - step] === 1);
      if (reached) this.#sums[known] = 1;
    }
    return this.#sums[sum] === 1;
  }
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
