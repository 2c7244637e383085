import type { Combinations } from './combinations.js';
import type { Way, Yield } from './yield.js';

/** Coins of what was not seen. */
const NONE = -1;

/**
 * The best of all that a rectangle can yield: of every combination of pieces that
 * with the most coins of remnants, and none that another matches in every piece
 * and in coins. A piece that is not wanted can always be left in the metal around
 * it, which is then worth no less, so nothing is lost with those.
 */
export class Frontier {
  readonly #combinations: Combinations;
  readonly #kept: Float64Array;
  readonly #ways = new Map<number, Way>();

  constructor(combinations: Combinations) {
    this.#combinations = combinations;
    this.#kept = new Float64Array(combinations.size).fill(NONE);
  }

  /** Whether this would be better than what is known of the same pieces. */
  betters(pieces: number, kept: number): boolean {
    return kept > this.#kept[pieces];
  }

  add(pieces: number, kept: number, way: Way): void {
    if (!this.betters(pieces, kept)) return;
    this.#kept[pieces] = kept;
    this.#ways.set(pieces, way);
  }

  /** Those that no other matches. */
  best(): readonly Yield[] {
    const { size } = this.#combinations;
    /** Most coins of any that has all these pieces. */
    const most = new Float64Array(size);
    const best: Yield[] = [];
    for (let pieces = size - 1; pieces >= 0; pieces--) {
      let more = NONE;
      for (const larger of this.#combinations.withOneMore(pieces)) {
        more = Math.max(more, most[larger]);
      }
      const kept = this.#kept[pieces];
      most[pieces] = Math.max(kept, more);
      const way = kept > more ? this.#ways.get(pieces) : undefined;
      if (way !== undefined) best.push({ pieces, kept, way });
    }
    return best;
  }
}
