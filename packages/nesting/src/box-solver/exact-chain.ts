import type { Limits } from '../pattern/limits.js';

/** Larger than any part. */
const NO_PART = 0x7fffffff;

/** What remnants of one breadth are worth. */
export interface Remnants {
  /** Coins for a remnant of extent x at `start + x`. */
  readonly coins: Float64Array;
  readonly start: number;
  /** What a coin is worth. */
  readonly coin: number;
  /** Least gross extent that is worth anything. */
  readonly least: number;
}

/**
 * The best row of parts along one direction for every extent in turn, where no
 * tick may be trimmed away unseen: parts and rests are no narrower than the
 * limit, or a kerf takes what is left. An unbounded knapsack: of two or more
 * parts that hold pieces, the smallest that is not itself best cut takes at most
 * half the extent. Remnants are no such parts: one rest is worth no less than
 * several, so it is only looked for beside a single part.
 */
export class ExactChain {
  /** How much of a rest the kerf of one cut may take. */
  readonly #shave: number;
  /** Least gross extent of anything that is parted off. */
  readonly #least: number;
  /** Parts worth having and not best cut, ascending; ended by one too large. */
  #part = new Int32Array(8);
  #partWorth = new Float64Array(8);
  #parts = 0;
  /** Where the best of the last kerf's extents is. */
  #latest = 0;
  /** The best that leaves room for scrap beyond it. */
  #besideScrap = 0;

  /**
   * @param shaving whether a rest that the kerf takes may be anywhere in the row. Where
   * a row has one rest only, no kerf is looked at here: see `withKerf`
   */
  constructor({ kerf, narrowest }: Limits, shaving: boolean) {
    this.#shave = shaving ? kerf : 0;
    this.#least = narrowest + kerf;
    this.restart();
  }

  /** Forgets everything, for other worths. */
  restart(): void {
    this.#parts = 0;
    this.#part[0] = NO_PART;
    this.#latest = 0;
    this.#besideScrap = 0;
  }

  /**
   * The most that an extent is worth when it is cut; 0 where it cannot be.
   * @param extent gross ticks; called with 1, 2, 3, ... in turn
   * @param best where `best[start + x]` is the worth of each extent x before, cut or not
   * @param remnants absent where they are worth nothing
   */
  cut(extent: number, best: Float64Array, start: number, remnants?: Remnants): number {
    const least = this.#least;
    if (extent <= least) return 0;
    let cut = this.#shave > 0 ? this.#beforeKerf(extent, best, start) : 0;
    const room = extent - least;
    if (room < least) return cut;
    const worth = best[start + room];
    if (worth > this.#besideScrap) this.#besideScrap = worth;
    if (this.#besideScrap > cut) cut = this.#besideScrap;
    const most = extent >> 1;
    const part = this.#part;
    const partWorth = this.#partWorth;
    let n = 0;
    for (; part[n] <= most; n++) {
      const both = partWorth[n] + best[start + extent - part[n]];
      if (both > cut) cut = both;
    }
    if (remnants === undefined) return cut;
    const { coins, coin } = remnants;
    const beyond = remnants.start + extent;
    const beside = extent - Math.max(least, remnants.least);
    for (; part[n] <= beside; n++) {
      const both = partWorth[n] + coin * coins[beyond - part[n]];
      if (both > cut) cut = both;
    }
    return cut;
  }

  /** Says that an extent is worth so much as one part: more than cut, and than as a remnant. */
  add(extent: number, worth: number): void {
    if (extent < this.#least) return;
    if (this.#parts + 1 === this.#part.length) this.#grow();
    this.#part[this.#parts] = extent;
    this.#partWorth[this.#parts] = worth;
    this.#parts++;
    this.#part[this.#parts] = NO_PART;
  }

  #grow(): void {
    const part = new Int32Array(2 * this.#part.length);
    const partWorth = new Float64Array(part.length);
    part.set(this.#part);
    partWorth.set(this.#partWorth);
    this.#part = part;
    this.#partWorth = partWorth;
  }

  /** The best of the extents to which the kerf of one cut takes all the rest. */
  #beforeKerf(extent: number, best: Float64Array, start: number): number {
    const from = Math.max(this.#least, extent - this.#shave);
    if (this.#latest < from) {
      this.#latest = from;
      for (let x = from + 1; x < extent; x++) {
        if (best[start + x] >= best[start + this.#latest]) this.#latest = x;
      }
    } else if (best[start + extent - 1] >= best[start + this.#latest]) {
      this.#latest = extent - 1;
    }
    return best[start + this.#latest];
  }
}

/**
 * The best rows of every extent where a row has one rest only, and the kerf of the
 * last cut may take it.
 * @param best the same with no rest, or one that is left, at `best[x]`
 * @param into where they go, from `start` on
 */
export function withKerf(
  extent: number,
  { kerf, narrowest }: Limits,
  best: Float64Array,
  into: Float64Array,
  start: number,
): void {
  let latest = 0;
  for (let x = 0; x <= extent; x++) {
    into[start + x] = best[x];
    const from = Math.max(x - kerf, narrowest + kerf);
    if (from >= x) continue;
    if (latest < from) {
      latest = from;
      for (let near = from + 1; near < x; near++) if (best[near] >= best[latest]) latest = near;
    } else if (best[x - 1] >= best[latest]) latest = x - 1;
    if (best[latest] > best[x]) into[start + x] = best[latest];
  }
}
