import { keptValue } from '../pattern/kept-value.js';
import type { KeepRule } from '../problem.js';
import type { Remnants } from './exact-chain.js';

/** What remnants of every whole size up to a box's are worth in the rack. */
export class RemnantTable {
  readonly #length: number;
  readonly #width: number;
  readonly #kerf: number;
  readonly #leastWidth: number;
  /** Coins for length x and width y at y * (box length + 1) + x. */
  readonly #byRow: Float64Array;
  /** The same at x * (box width + 1) + y. */
  readonly #byColumn: Float64Array;

  /** @param length of the box in gross ticks, as its width */
  constructor(length: number, width: number, kerf: number, rule: KeepRule) {
    this.#length = length;
    this.#width = width;
    this.#kerf = kerf;
    this.#leastWidth = rule.leastWidth;
    this.#byRow = new Float64Array((length + 1) * (width + 1));
    this.#byColumn = new Float64Array((length + 1) * (width + 1));
    for (let y = kerf + 1; y <= width; y++) {
      for (let x = kerf + 1; x <= length; x++) {
        const coins = keptValue(x - kerf, y - kerf, rule);
        this.#byRow[y * (length + 1) + x] = coins;
        this.#byColumn[x * (width + 1) + y] = coins;
      }
    }
  }

  /** Coins for a remnant of so many gross ticks. */
  coins(x: number, y: number): number {
    return this.#byRow[y * (this.#length + 1) + x];
  }

  /** Remnants of one width, by their length; absent where none is worth anything. */
  ofWidth(y: number, coin: number): Remnants | undefined {
    return this.#remnants(this.#byRow, y, this.#length, coin);
  }

  /** Remnants of one length, by their width. */
  ofLength(x: number, coin: number): Remnants | undefined {
    return this.#remnants(this.#byColumn, x, this.#width, coin);
  }

  #remnants(coins: Float64Array, breadth: number, most: number, coin: number) {
    const least = this.#leastWidth + this.#kerf;
    if (coin === 0 || breadth < least) return undefined;
    return { coins, start: breadth * (most + 1), coin, least };
  }
}
