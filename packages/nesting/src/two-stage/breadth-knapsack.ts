import type { ListedRest } from '../pattern/strip-lister.js';

/** What the best strip of a width is worth. */
export interface WidthWorth {
  /** Index in the family. */
  readonly width: number;
  /** Gross ticks. */
  readonly extent: number;
  /** Above 0. */
  readonly worth: number;
  /** True where it could be wider by any amount and still be cut. */
  readonly stretches: boolean;
}

/** Nothing fills just so much. */
const NONE = Number.NEGATIVE_INFINITY;

/**
 * Strips side by side on a face, and a rest beside them: a knapsack for every room up to
 * the breadth. What is too narrow to be left must be taken up by a strip that stretches.
 */
export class BreadthKnapsack {
  readonly #items: readonly WidthWorth[];
  readonly #rests: readonly ListedRest[];
  readonly #breadth: number;
  readonly #coin: number;
  /** The most that strips are worth which fill just so much. */
  readonly #any: Float64Array;
  /** The same where one of them stretches. */
  readonly #slack: Float64Array;
  /** The most of any room up to so much, filled or not. */
  readonly #anyUpTo: Float64Array;
  readonly #slackUpTo: Float64Array;

  /**
   * @param items ascending by extent
   * @param rests ascending by extent, the first of 0
   */
  constructor(
    items: readonly WidthWorth[],
    rests: readonly ListedRest[],
    breadth: number,
    coin: number,
  ) {
    this.#items = items;
    this.#rests = rests;
    this.#breadth = breadth;
    this.#coin = coin;
    this.#any = new Float64Array(breadth + 1).fill(NONE);
    this.#slack = new Float64Array(breadth + 1).fill(NONE);
    this.#any[0] = 0;
    this.#fill();
    this.#anyUpTo = upTo(this.#any);
    this.#slackUpTo = upTo(this.#slack);
  }

  /** The most that the face can be worth; 0 where no strip fits. */
  get worth(): number {
    return Math.max(0, this.#inRoom(this.#breadth, false, true));
  }

  /** The most that can be beside a strip of an extent. */
  beside(extent: number, stretches: boolean): number {
    return this.#inRoom(this.#breadth - extent, stretches, false);
  }

  /** The most that the face can be worth with such a rest. */
  beforeRest({ extent, kept }: ListedRest): number {
    const room = this.#breadth - extent;
    const strips = extent === 0 ? this.#slackUpTo[room] : NONE;
    // A rest stands for those that are a little larger and worth no more.
    return Math.max(strips, this.#anyUpTo[room]) + this.#coin * kept;
  }

  /** Strips of the most worth on the face. */
  best(): readonly WidthWorth[] {
    const { worth } = this;
    for (const { extent, kept } of this.#rests) {
      const room = this.#breadth - extent;
      // A rest stands for larger ones too, but for the one of nothing.
      const least = extent === 0 ? room : 1;
      for (let filled = room; filled >= Math.max(1, least); filled--) {
        if (this.#any[filled] + this.#coin * kept === worth) return this.#walkBack(filled, false);
      }
    }
    for (let filled = this.#breadth; filled > 0; filled--) {
      if (this.#slack[filled] === worth) return this.#walkBack(filled, true);
    }
    return [];
  }

  #fill(): void {
    const any = this.#any;
    const slack = this.#slack;
    for (let room = 1; room < any.length; room++) {
      let most = NONE;
      let stretched = NONE;
      for (const { extent, worth, stretches } of this.#items) {
        if (extent > room) break;
        const before = any[room - extent] + worth;
        if (before > most) most = before;
        const other = stretches ? before : slack[room - extent] + worth;
        if (other > stretched) stretched = other;
      }
      any[room] = most;
      slack[room] = stretched;
    }
  }

  /**
   * The most in a room.
   * @param stretches whether a strip that stretches is there already
   * @param some whether there must be a strip
   */
  #inRoom(room: number, stretches: boolean, some: boolean): number {
    let most = (stretches ? this.#anyUpTo : this.#slackUpTo)[room];
    for (const { extent, kept } of this.#rests) {
      if (extent > room) break;
      // Larger rests that are worth no more are as good, so that what is filled may be less.
      const filled = extent === 0 ? this.#any[room] : this.#anyUpTo[room - extent];
      if (some && filled <= 0) continue;
      most = Math.max(most, filled + this.#coin * kept);
    }
    return most;
  }

  #walkBack(filled: number, stretched: boolean): readonly WidthWorth[] {
    const strips: WidthWorth[] = [];
    let needed = stretched;
    for (let room = filled; room > 0; ) {
      const worth = (needed ? this.#slack : this.#any)[room];
      const from = (item: WidthWorth) => (needed && !item.stretches ? this.#slack : this.#any);
      const last = this.#items.find(
        (item) => item.extent <= room && from(item)[room - item.extent] + item.worth === worth,
      );
      if (last === undefined) throw new Error(`no strip explains the worth of ${room} ticks`);
      needed &&= !last.stretches;
      strips.push(last);
      room -= last.extent;
    }
    return strips;
  }
}

function upTo(exact: Float64Array): Float64Array {
  let most = NONE;
  return exact.map((worth) => {
    most = Math.max(most, worth);
    return most;
  });
}
