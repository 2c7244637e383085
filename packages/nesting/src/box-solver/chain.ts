import { type Division, divisions } from './division.js';
import type { RasterPoints } from './raster-points.js';

/**
 * The most valuable row of parts along one direction, each part used any number of
 * times and trims free: an unbounded knapsack over raster points. Of two or more
 * parts, the smallest takes at most half; and parts that smaller ones make up as
 * well are not tried again.
 */
export class Chain {
  readonly #division: Division;
  readonly #best: Float64Array;
  readonly #part: Int32Array;
  readonly #items: Float64Array;

  constructor(points: RasterPoints) {
    const count = points.at.length;
    this.#division = divisions(points);
    this.#best = new Float64Array(count);
    this.#part = new Int32Array(count + 1);
    this.#items = new Float64Array(count);
  }

  /** @param items the worth of a part that reaches to each point, 0 for none */
  solve(items: ArrayLike<number>): number {
    const best = this.#best;
    const part = this.#part;
    const { half, row, beyond } = this.#division;
    const count = best.length;
    this.#items.set(items);
    let parts = 0;
    part[0] = count;
    for (let i = 1; i < count; i++) {
      let worth = best[i - 1];
      const most = half[i];
      const divide = row[i];
      for (let n = 0; part[n] <= most; n++) {
        const both = items[part[n]] + best[beyond[divide + part[n]]];
        if (both > worth) worth = both;
      }
      if (items[i] > worth) {
        worth = items[i];
        part[parts++] = i;
        part[parts] = count;
      }
      best[i] = worth;
    }
    return best[count - 1];
  }

  /** The points of the parts of the best row. */
  parts(): readonly number[] {
    const best = this.#best;
    const items = this.#items;
    const { half, row, beyond } = this.#division;
    const parts: number[] = [];
    let i = best.length - 1;
    for (;;) {
      while (i > 0 && best[i - 1] === best[i]) i--;
      if (i === 0) return parts;
      if (best[i] === items[i]) return [...parts, i];
      let part = 1;
      const explains = (j: number) =>
        items[j] > 0 && items[j] + best[beyond[row[i] + j]] === best[i];
      while (part <= half[i] && !explains(part)) part++;
      if (part > half[i]) throw new Error(`no part explains the worth at point ${i}`);
      parts.push(part);
      i = beyond[row[i] + part];
    }
  }
}
