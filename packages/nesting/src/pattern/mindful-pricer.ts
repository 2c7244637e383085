import type { Pattern } from './part.js';
import type { PatternPricer, PricedPatterns } from './pattern-pricer.js';

/** How often values are lowered and patterns priced again. */
const TIMES = 5;
/** What is left of the value of a piece of which a pattern has too many. */
const LOWERED = 0.7;

/**
 * Makes a pricer that knows no demand mindful of it: where its patterns have more
 * of a piece than is wanted, the piece is priced lower and the box again, so that
 * patterns come up which have others in its place. Its worth need not hold for all
 * patterns.
 */
export class MindfulPricer implements PatternPricer {
  readonly #pricer: PatternPricer;
  readonly #demand: readonly number[];

  constructor(pricer: PatternPricer, demand: readonly number[]) {
    this.#pricer = pricer;
    this.#demand = demand;
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const found: { pattern: Pattern; worth: number }[][] = [];
    const lowered = Float64Array.from(values);
    for (let time = 0; time <= TIMES; time++) {
      const priced = this.#pricer.price(lowered, coin);
      const surplus = new Set<number>();
      priced.worth.forEach((_, box) => {
        found[box] ??= [];
        for (const { pattern } of priced.patterns(box)) {
          found[box].push({ pattern, worth: this.#worth(pattern, values, coin) });
          for (const [piece, copies] of pattern.counts) {
            if (copies > this.#demand[piece]) surplus.add(piece);
          }
        }
      });
      if (surplus.size === 0) break;
      for (const piece of surplus) lowered[piece] = Math.floor(lowered[piece] * LOWERED);
    }
    return {
      worth: found.map((offers) => Math.max(0, ...offers.map(({ worth }) => worth))),
      patterns: (box) => found[box] ?? [],
    };
  }

  /** What a pattern is worth once its surplus is taken out, but for what that leaves. */
  #worth({ counts, kept }: Pattern, values: ArrayLike<number>, coin: number): number {
    return counts.reduce(
      (sum, [piece, copies]) => sum + values[piece] * Math.min(copies, this.#demand[piece]),
      kept * coin,
    );
  }
}
