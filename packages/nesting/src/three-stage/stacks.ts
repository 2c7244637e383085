import type { RasterPoints } from '../box-solver/raster-points.js';
import type { BoxLay } from '../pattern/box.js';

/**
 * The most valuable stack of pieces in a section of every extent and height, when
 * trims are free: what a section of one length holds is what a shorter one holds,
 * and the pieces of just that length. One knapsack, taken up again for each
 * length, gives them all.
 */
export class Stacks {
  /** The lengths that matter, ascending. */
  readonly lengths: readonly number[];
  readonly #lays: readonly (readonly BoxLay[])[];
  readonly #heights: RasterPoints;
  /** For length k, at k * heights + the index of the height. */
  readonly #best: Float64Array;
  #values: ArrayLike<number> = [];

  /** @param heights points of the direction square to the length */
  constructor(lays: readonly BoxLay[], heights: RasterPoints) {
    this.lengths = [...new Set(lays.map(({ length }) => length))].sort((a, b) => a - b);
    this.#lays = this.lengths.map((length) => lays.filter((lay) => lay.length === length));
    this.#heights = heights;
    this.#best = new Float64Array(this.lengths.length * heights.at.length);
  }

  solve(values: ArrayLike<number>): void {
    const { at, below } = this.#heights;
    const count = at.length;
    const best = this.#best;
    this.#values = Float64Array.from(values);
    for (let k = 0; k < this.lengths.length; k++) {
      const start = k * count;
      if (k === 0) best.fill(0, 0, count);
      else best.copyWithin(start, start - count, start);
      for (const { piece, width } of this.#lays[k]) {
        const value = values[piece];
        for (let j = 1; j < count; j++) {
          if (at[j] < width) continue;
          const worth = value + best[start + below[at[j] - width]];
          if (worth > best[start + j]) best[start + j] = worth;
        }
      }
    }
  }

  /**
   * @param length index among `lengths`, or -1 for none
   * @param height index of a point
   */
  worth(length: number, height: number): number {
    return length < 0 ? 0 : this.#best[length * this.#heights.at.length + height];
  }

  /** What lies in that stack. */
  pieces(length: number, height: number): readonly BoxLay[] {
    const { at, below } = this.#heights;
    const stack: BoxLay[] = [];
    const lays = this.#lays.slice(0, length + 1).flat();
    let j = height;
    while (this.worth(length, j) > 0) {
      let most = 0;
      let next = 0;
      let chosen: BoxLay | undefined;
      for (const lay of lays) {
        if (lay.width > at[j] || !(this.#values[lay.piece] > 0)) continue;
        const rest = below[at[j] - lay.width];
        // The largest rather than the very worth: sums of doubles depend on their order.
        const worth = this.#values[lay.piece] + this.worth(length, rest);
        if (worth <= most) continue;
        most = worth;
        next = rest;
        chosen = lay;
      }
      if (chosen === undefined) break;
      stack.push(chosen);
      j = next;
    }
    return stack;
  }
}
