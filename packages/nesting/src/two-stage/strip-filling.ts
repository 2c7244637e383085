import { type Limits, mayRest } from '../pattern/limits.js';
import { EnoughLays } from './enough-lays.js';
import { fillWithLot, type Lot, lotsOf, offerLot, walkBack } from './lots.js';
import type { StripLay } from './strip-family.js';

/** Outweighs the rounding of products. */
const ROUNDING = 1e-12;

/** What lays are worth in a strip. */
export interface LayWorths {
  /** Of one copy of each lay, by its index; 0 where it may not lie in the strip. */
  readonly worths: ArrayLike<number>;
  /** The end of a strip is worth no more than this for each tick of it. */
  readonly endPerTick: number;
}

/**
 * Fills strips of one length best, each at worths of its own. Lays come in order of what they are worth
 * by length, and those are left out that others replace, or with which a strip could not be worth more
 * than it is: of hundreds some dozen are left.
 */
export class StripFilling {
  readonly #limits: Limits;
  readonly #length: number;
  readonly #alongs: readonly number[];
  readonly #lots: readonly (readonly Lot[])[];
  /** Lays by how much of the strip they take up. */
  readonly #byAlong: readonly number[];
  readonly #enough: EnoughLays;
  readonly #inOrder: Float64Array;
  readonly #best: Float64Array;
  #steps = 0;

  /**
   * @param most for each lay, how many copies are of use
   * @param length of the strips, in gross ticks
   */
  constructor(lays: readonly StripLay[], most: readonly number[], length: number, limits: Limits) {
    this.#limits = limits;
    this.#length = length;
    this.#alongs = lays.map(({ along }) => along);
    this.#lots = lays.map(({ along }, lay) => lotsOf(lay, along, most[lay], length));
    this.#byAlong = [...lays.keys()].sort((a, b) => lays[a].along - lays[b].along || a - b);
    this.#enough = new EnoughLays(
      this.#byAlong.map((lay) => lays[lay].along),
      this.#byAlong.map((lay) => most[lay]),
      length,
    );
    this.#inOrder = new Float64Array(lays.length);
    this.#best = new Float64Array(length + 1);
  }

  /** Places at which a lot was tried so far. */
  get steps(): number {
    return this.#steps;
  }

  /**
   * @returns for each length, what some filling of just that length is worth, among which is the best
   *   with its end; valid until the next call
   */
  fill(strip: LayWorths): Float64Array {
    return this.#fill(strip, (lot, worth) => {
      fillWithLot(this.#best, lot, worth);
    });
  }

  /** Adds up the copies of each lay in what `fill` filled so much with. */
  count(strip: LayWorths, filled: number, counts: Map<number, number>): void {
    const size = this.#length + 1;
    const lots: Lot[] = [];
    const taken: Uint8Array[] = [];
    this.#fill(strip, (lot, worth) => {
      const own = new Uint8Array(size);
      offerLot(this.#best, own, 0, lot, worth);
      lots.push(lot);
      taken.push(own);
    });
    let at = filled;
    for (let index = lots.length - 1; index >= 0; index--) {
      at = walkBack([lots[index]], taken[index], at, counts);
    }
  }

  #fill({ worths, endPerTick }: LayWorths, offer: (lot: Lot, worth: number) => void): Float64Array {
    const best = this.#best.fill(Number.NEGATIVE_INFINITY);
    best[0] = 0;
    const alongs = this.#alongs;
    const lays = this.#laysOf(worths);
    if (lays.length === 0) return best;
    const [first] = lays;
    const perTick = Math.max(endPerTick, worths[first] / alongs[first]);
    let most = 0;
    for (const lay of lays) {
      const atMost = worths[lay] + perTick * (this.#length - alongs[lay]);
      if (atMost * (1 + ROUNDING) <= most) continue;
      for (const lot of this.#lots[lay]) offer(lot, worths[lay] * lot.copies);
      this.#steps += this.#lots[lay].length * this.#length;
      most = this.#worthReached(best);
    }
    return best;
  }

  /** Lays that are worth something and enough, those first that are worth most for their length. */
  #laysOf(worths: ArrayLike<number>): readonly number[] {
    const byAlong = this.#byAlong;
    const inOrder = this.#inOrder;
    for (let rank = 0; rank < byAlong.length; rank++) inOrder[rank] = worths[byAlong[rank]];
    // Filled less, a strip might end in a sliver.
    const mayFillLess = this.#limits.narrowest <= 1;
    const ranks = mayFillLess ? [...this.#enough.of(inOrder)] : [...inOrder.keys()];
    const perTick = (lay: number) => worths[lay] / this.#alongs[lay];
    return ranks
      .map((rank) => byAlong[rank])
      .filter((lay) => worths[lay] > 0)
      .sort((a, b) => perTick(b) - perTick(a) || a - b);
  }

  /** The most that a filling is worth which may be cut. */
  #worthReached(best: Float64Array): number {
    let most = 0;
    for (let filled = 1; filled <= this.#length; filled++) {
      if (best[filled] > most && mayRest(this.#length - filled, this.#limits)) most = best[filled];
    }
    return most;
  }
}
