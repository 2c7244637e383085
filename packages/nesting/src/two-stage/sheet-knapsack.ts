import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, mayRest, netRest } from '../pattern/limits.js';
import { type Lot, lotsOf, offerLot, walkBack } from './lots.js';
import { EVERY_TICK, type Measure, stepsOf, stepsWithin } from './measure.js';
import type { StripWidth } from './strip-family.js';

/** Strips by width and how many of each; the last is widened by what must not be left over. */
export interface SheetFilling {
  /** [index of the width, strips at least 1], ascending. */
  readonly widths: readonly (readonly [number, number])[];
  /** Gross ticks by which one strip of `widened` is wider than its width; 0 for none. */
  readonly by: number;
  /** Index of the width of which one strip is wider. */
  readonly widened: number;
}

/** Finds the strips that are worth most side by side on one face. */
export class SheetKnapsack {
  readonly #breadth: number;
  readonly #length: number;
  readonly #widths: readonly StripWidth[];
  readonly #limits: Limits;
  readonly #keep: KeepValue | undefined;
  readonly #measure: Measure;
  /** Steps of the measure across the strips. */
  readonly #room: number;
  readonly #lots: readonly Lot[];
  readonly #taken: Uint8Array;
  readonly #best: Float64Array;
  /** Steps at which the best filling ends, the rest beyond it left over; -1 for none. */
  #filled = -1;
  /** The best filling, where one strip of it takes up the rest. */
  #stretched: { readonly width: number; readonly filled: number } | undefined;

  /**
   * @param breadth gross ticks
   * @param length of the strips, gross ticks
   * @param most for each width, how many strips of it are of use
   * @param measure across the strips; no width may be less than a step of it
   */
  constructor(
    breadth: number,
    length: number,
    widths: readonly StripWidth[],
    most: readonly number[],
    limits: Limits,
    keep: KeepValue | undefined,
    measure = EVERY_TICK,
  ) {
    this.#breadth = breadth;
    this.#length = length;
    this.#widths = widths;
    this.#limits = limits;
    this.#keep = keep;
    this.#measure = measure;
    const room = stepsWithin(breadth, measure, limits);
    this.#room = room;
    // A strip too narrow to be sheared off can still be the whole breadth.
    const usable = (extent: number) =>
      extent - limits.kerf >= limits.narrowest || extent === breadth;
    this.#lots = widths.flatMap(({ extent }, w) =>
      usable(extent) ? lotsOf(w, stepsOf(extent, measure), most[w], room) : [],
    );
    this.#taken = new Uint8Array(this.#lots.length * (room + 1));
    this.#best = new Float64Array(room + 1);
  }

  /**
   * @param worth of a strip of each width
   * @param coin what a coin of kept remnants is worth in the same unit
   * @returns the most that the strips and the rest can be worth; 0 for nothing to cut
   */
  solve(worth: (width: number) => number, coin: number): number {
    const slack = this.#keep === undefined && this.#limits.narrowest <= 1;
    const best = this.#best.fill(slack ? 0 : Number.NEGATIVE_INFINITY);
    best[0] = 0;
    this.#taken.fill(0);
    this.#lots.forEach((lot, index) => {
      offerLot(best, this.#taken, index * best.length, lot, worth(lot.item) * lot.copies);
    });
    this.#filled = -1;
    this.#stretched = undefined;
    if (slack) {
      if (best[this.#room] > 0) this.#filled = this.#room;
      return best[this.#room];
    }
    let most = 0;
    for (let filled = 1; filled <= this.#room; filled++) {
      const rest = this.#breadth - filled * this.#measure.step;
      if (best[filled] <= 0 || !mayRest(rest, this.#limits)) continue;
      const band = netRest(rest, this.#limits);
      const kept = this.#keep?.(this.#length - this.#limits.kerf, band) ?? 0;
      const total = best[filled] + coin * kept;
      if (total <= most) continue;
      most = total;
      this.#filled = filled;
    }
    // In larger steps there is never so little left.
    return this.#measure.step > 1 ? most : Math.max(most, this.#solveStretched(worth, most));
  }

  filling(): SheetFilling | undefined {
    const counts = new Map<number, number>();
    if (this.#stretched !== undefined) {
      const { width, filled } = this.#stretched;
      counts.set(width, 1);
      walkBack(this.#lots, this.#taken, filled - this.#widths[width].extent, counts);
      return { widths: ascending(counts), by: this.#breadth - filled, widened: width };
    }
    if (this.#filled < 0) return undefined;
    walkBack(this.#lots, this.#taken, this.#filled, counts);
    return { widths: ascending(counts), by: 0, widened: -1 };
  }

  /**
   * Fillings whose rest would be a sliver, taken up by one strip that stretches.
   * One such strip is set beside a best filling of the others; its copies may so
   * exceed what is of use by one, which leaves the worth an upper bound.
   */
  #solveStretched(worth: (width: number) => number, atLeast: number): number {
    const { kerf, longestCut } = this.#limits;
    let most = atLeast;
    this.#widths.forEach((width, w) => {
      const own = worth(w);
      if (!width.stretches || own <= 0) return;
      for (let filled = width.extent; filled <= this.#breadth; filled++) {
        const rest = this.#breadth - filled;
        if (width.extent + rest - kerf > longestCut) continue;
        const total = this.#best[filled - width.extent] + own;
        if (total <= most) continue;
        most = total;
        this.#stretched = { width: w, filled };
      }
    });
    return most;
  }
}

function ascending(counts: ReadonlyMap<number, number>): SheetFilling['widths'] {
  return [...counts].sort((a, b) => a[0] - b[0]);
}
