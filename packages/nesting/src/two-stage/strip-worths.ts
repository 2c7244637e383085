import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, mayRest, netRest } from '../pattern/limits.js';
import { type Lot, lotsOf } from './lots.js';
import type { StripFamily } from './strip-family.js';
import type { LayCounts } from './strip-knapsack.js';

/** A strip's pieces, and what its remnants are worth. */
export interface FilledStrip {
  readonly lays: LayCounts;
  /** Coins. */
  readonly kept: number;
  /** What they come to with the values of the pieces. */
  readonly worth: number;
}

/** A lay as an item of a knapsack. */
interface Item {
  readonly lay: number;
  readonly piece: number;
  readonly size: number;
  /** Coins of its trim. */
  readonly kept: number;
  /** Copies at most. */
  readonly copies: number;
  readonly lots: readonly Lot[];
}

/** No filling ends there. */
const NONE = Number.NEGATIVE_INFINITY;

/**
 * What strips of every width of a family are worth, a knapsack for each, and the
 * fillings of one that are worth so much. It knows only the points to which some
 * pieces reach together, few where pieces are long, and keeps little between widths,
 * so that there may be many.
 */
export class StripWorths {
  readonly #family: StripFamily;
  readonly #demand: readonly number[];
  readonly #limits: Limits;
  readonly #keep: KeepValue;
  /** Points to which pieces reach, ascending from 0. */
  readonly #at: readonly number[];
  /** By gross ticks, the index of the point there; -1 for none. */
  readonly #point: Int32Array;
  /** The points at which a strip may end. */
  readonly #ending: readonly number[];
  /** By size, the point so much before each; -1 for none. Made when first needed. */
  readonly #before = new Map<number, Int32Array>();
  /** By width; made when first needed. */
  readonly #itemsOf: (readonly Item[] | undefined)[] = [];
  /** By width, coins of the end of a strip filled up to each point; made when first needed. */
  readonly #ends: (Float64Array | undefined)[] = [];
  readonly #worth: Float64Array;
  #values: ArrayLike<number> = [];
  #coin = 0;

  constructor(family: StripFamily, demand: readonly number[], limits: Limits, keep: KeepValue) {
    this.#family = family;
    this.#demand = demand;
    this.#limits = limits;
    this.#keep = keep;
    this.#worth = new Float64Array(family.widths.length);
    this.#at = reached(family);
    this.#point = new Int32Array(family.length + 1).fill(-1);
    this.#at.forEach((at, point) => {
      this.#point[at] = point;
    });
    const mayEnd = (at: number) => at > 0 && mayRest(family.length - at, limits);
    this.#ending = [...this.#at.keys()].filter((point) => mayEnd(this.#at[point]));
  }

  /** @param values one for each piece */
  solve(values: ArrayLike<number>, coin: number): void {
    this.#values = values;
    this.#coin = coin;
    const best = new Float64Array(this.#at.length);
    let last: readonly Item[] = [];
    let before: readonly number[] | undefined;
    for (const w of this.#family.widths.keys()) {
      const items = this.#items(w);
      const gains = items.map((item) => this.#gain(item));
      // Most widths hold the same as the one before, and differ in their ends alone.
      if (before === undefined || !alike(items, gains, last, before)) {
        this.#fill(items, gains, best);
        last = items;
        before = gains;
      }
      this.#worth[w] = this.#best(w, best);
    }
  }

  worth(width: number): number {
    return this.#worth[width];
  }

  /**
   * Lists the fillings of a width that are worth at least so much, whether or not
   * another piece could be added.
   * @param most fillings after which it ends
   * @returns undefined where the steps ran out
   */
  fillings(
    w: number,
    least: number,
    budget: { steps: number },
    most = Number.POSITIVE_INFINITY,
  ): readonly FilledStrip[] | undefined {
    if (this.#worth[w] < least) return [];
    const ends = this.#endsOf(w);
    const { length } = this.#family;
    const items = this.#items(w);
    const tables = this.#tables(items, ends);
    const found: FilledStrip[] = [];
    const taken: [number, number][] = [];
    const visit = (i: number, filled: number, worth: number, kept: number): boolean => {
      const point = this.#point[filled];
      if (--budget.steps < 0) return false;
      if (worth + tables[i][point] < least || found.length >= most) return true;
      if (i === 0) {
        if (filled === 0 || !mayRest(length - filled, this.#limits)) return true;
        const own = { kept: kept + ends[point], worth: worth + this.#coin * ends[point] };
        found.push({ lays: [...taken].reverse(), ...own });
        return true;
      }
      const { lay, size, ...item } = items[i - 1];
      const gain = this.#gain(items[i - 1]);
      const fits = Math.floor((length - filled) / size);
      for (let count = Math.min(item.copies, fits); count >= 0; count--) {
        if (count > 0) taken.push([lay, count]);
        const own = count * item.kept;
        const done = visit(i - 1, filled + count * size, worth + count * gain, kept + own);
        if (count > 0) taken.pop();
        if (!done) return false;
      }
      return true;
    };
    return visit(items.length, 0, 0, 0) ? found : undefined;
  }

  /** By point, the most that pieces are worth which reach there. */
  #fill(items: readonly Item[], gains: readonly number[], best: Float64Array): void {
    best.fill(NONE);
    best[0] = 0;
    items.forEach(({ lots }, i) => {
      for (const { size, copies, again } of lots) {
        const before = this.#pointsBefore(size);
        const worth = gains[i] * copies;
        const end = best.length;
        const [from, step] = again ? [1, 1] : [end - 1, -1];
        for (let point = from; point > 0 && point < end; point += step) {
          const start = before[point];
          if (start >= 0 && best[start] + worth > best[point]) best[point] = best[start] + worth;
        }
      }
    });
  }

  #best(w: number, best: Float64Array): number {
    const ends = this.#endsOf(w);
    let most = 0;
    for (const point of this.#ending) {
      const worth = best[point] + this.#coin * ends[point];
      if (worth > most) most = worth;
    }
    return most;
  }

  /** What one is worth, and the coins of its trim therein. */
  #gain({ piece, kept }: Item): number {
    return this.#values[piece] + this.#coin * kept;
  }

  #pointsBefore(size: number): Int32Array {
    const known = this.#before.get(size);
    if (known !== undefined) return known;
    const before = Int32Array.from(this.#at, (at) => (at < size ? -1 : this.#point[at - size]));
    this.#before.set(size, before);
    return before;
  }

  #items(w: number): readonly Item[] {
    const known = this.#itemsOf[w];
    if (known !== undefined) return known;
    const { length, lays, widths } = this.#family;
    const { leading, fitting, extent } = widths[w];
    const { kerf } = this.#limits;
    const items = [...Array(leading).keys(), ...fitting].map((lay) => {
      const { along: size, across, piece } = lays[lay];
      const kept = this.#keep(size - kerf, netRest(extent - across, this.#limits));
      const copies = Math.min(Math.floor(length / size), this.#demand[piece]);
      return { lay, piece, size, kept, copies, lots: lotsOf(lay, size, copies, length) };
    });
    this.#itemsOf[w] = items;
    return items;
  }

  /** By so many of the lays and the point to which others reach, the most that they and the end are worth. */
  #tables(items: readonly Item[], ends: Float64Array): readonly Float64Array[] {
    const { length } = this.#family;
    const tables = [ends.map((coins) => this.#coin * coins)];
    for (const item of items) {
      const { size, copies } = item;
      const gain = this.#gain(item);
      const before = tables[tables.length - 1];
      tables.push(
        before.map((none, point) => {
          let best = none;
          const from = this.#at[point];
          const most = Math.min(copies, Math.floor((length - from) / size));
          for (let count = 1; count <= most; count++) {
            const worth = before[this.#point[from + count * size]] + count * gain;
            if (worth > best) best = worth;
          }
          return best;
        }),
      );
    }
    return tables;
  }

  #endsOf(w: number): Float64Array {
    const known = this.#ends[w];
    if (known !== undefined) return known;
    const { length, widths } = this.#family;
    const breadth = widths[w].extent - this.#limits.kerf;
    const ends = new Float64Array(this.#at.length);
    for (const [point, at] of this.#at.entries()) {
      const kept = this.#keep(netRest(length - at, this.#limits), breadth);
      // Shorter ones are worth no more.
      if (kept === 0) break;
      ends[point] = kept;
    }
    this.#ends[w] = ends;
    return ends;
  }
}

/** Points to which any number of lays reach end to end. */
function reached({ length, lays }: StripFamily): readonly number[] {
  const sizes = [...new Set(lays.map(({ along }) => along))];
  const at = new Uint8Array(length + 1);
  at[0] = 1;
  for (let x = 1; x <= length; x++) {
    if (sizes.some((size) => size <= x && at[x - size] === 1)) at[x] = 1;
  }
  return [...at.keys()].filter((x) => at[x] === 1);
}

/** Whether two widths hold the same lays, worth the same. */
function alike(
  items: readonly Item[],
  gains: readonly number[],
  others: readonly Item[],
  before: readonly number[],
): boolean {
  return (
    items.length === others.length &&
    items.every(({ lay }, i) => lay === others[i].lay && gains[i] === before[i])
  );
}
