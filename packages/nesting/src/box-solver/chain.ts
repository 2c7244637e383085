import { type Division, divisions } from './division.js';
import type { RasterPoints } from './raster-points.js';

/**
 * The most valuable row of parts along one direction, each point used any number
 * of times: an unbounded knapsack.
 */
export class Chain {
  readonly #points: RasterPoints;
  readonly #division: Division;
  readonly #best: Float64Array;
  #items: ArrayLike<number> = [];

  constructor(points: RasterPoints) {
    this.#points = points;
    this.#division = divisions(points);
    this.#best = new Float64Array(points.at.length);
  }

  /** @param items the worth of a part that reaches to each point, 0 for none */
  solve(items: ArrayLike<number>): number {
    const best = this.#best;
    const { half, row, beyond } = this.#division;
    this.#items = items;
    for (let i = 1; i < best.length; i++) {
      let worth = Math.max(best[i - 1], items[i]);
      for (let j = 1; j <= half[i]; j++) {
        worth = Math.max(worth, best[j] + best[beyond[row[i] + j]]);
      }
      best[i] = worth;
    }
    return best[best.length - 1];
  }

  /** The points of the parts of the best row. */
  parts(): readonly number[] {
    return this.#parts(this.#points.at.length - 1);
  }

  #parts(point: number): readonly number[] {
    const best = this.#best;
    let i = point;
    while (i > 0 && best[i - 1] === best[i]) i--;
    if (i === 0) return [];
    if (best[i] === this.#items[i]) return [i];
    const { half, row, beyond } = this.#division;
    for (let j = 1; j <= half[i]; j++) {
      const other = beyond[row[i] + j];
      if (best[j] + best[other] === best[i]) return [...this.#parts(j), ...this.#parts(other)];
    }
    throw new Error(`no part explains the worth at point ${i}`);
  }
}
