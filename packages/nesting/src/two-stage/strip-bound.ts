import { keptUnrounded } from '../pattern/kept-value.js';
import type { KeepRule } from '../problem.js';
import { type Lot, lotsOf } from './lots.js';
import type { StripFamily, StripLay } from './strip-family.js';

/** Widths between which what may be kept of a strip changes by its size alone. */
interface Span {
  /** Gross ticks, both ends included. */
  readonly from: number;
  readonly to: number;
  /** So many of the lots, the first ones, may lie in every strip so wide. */
  readonly lots: number;
}

/**
 * What strips of every width of a family are worth at most, remnants included. Between two widths at
 * which another lay fits, or another remnant becomes long or wide enough to be kept, the worth of
 * any filling grows in a line or not at all, so that of the best is convex: no strip between two
 * widths is worth more than the line between theirs. It is known at both ends of each span first;
 * closer where it is asked for.
 */
export class StripBound {
  readonly #length: number;
  /** Ascending by their extent across. */
  readonly #lays: readonly StripLay[];
  /** In the order of their lays. */
  readonly #lots: readonly Lot[];
  readonly #spans: readonly Span[];
  readonly #kerf: number;
  readonly #rule: KeepRule;
  readonly #best: Float64Array;
  /** By width. */
  readonly #worth: Float64Array;
  /** By width, 1 where it is no more than a strip just so wide can be worth. */
  readonly #exact: Uint8Array;
  #values: ArrayLike<number> = [];
  #coin = 0;

  /**
   * @param breadth gross ticks of the widest strip
   * @param demand copies of each piece that are of use
   */
  constructor(
    family: StripFamily,
    breadth: number,
    demand: readonly number[],
    kerf: number,
    rule: KeepRule,
  ) {
    const { length } = family;
    this.#length = length;
    this.#kerf = kerf;
    this.#rule = rule;
    const lays = [...family.lays].sort((a, b) => a.across - b.across);
    const lots = lays.flatMap(({ along, piece }, lay) => lotsOf(lay, along, demand[piece], length));
    this.#lays = lays;
    this.#lots = lots;
    const starts = startsOf(family, breadth, kerf, rule);
    this.#spans = starts.map((from, index): Span => {
      const wider = lots.findIndex(({ item }) => lays[item].across > from);
      return {
        from,
        to: (starts[index + 1] ?? breadth + 1) - 1,
        lots: wider < 0 ? lots.length : wider,
      };
    });
    this.#best = new Float64Array(length + 1);
    this.#worth = new Float64Array(breadth + 1);
    this.#exact = new Uint8Array(breadth + 1);
  }

  /** Steps of knapsacks that solving takes. */
  get steps(): number {
    return this.#spans.reduce((sum, { lots }) => sum + 2 * lots * this.#length, 0);
  }

  /**
   * @param values one for each piece, at least 0
   * @param coin what a coin of kept remnants is worth in the same unit
   */
  solve(values: ArrayLike<number>, coin: number): void {
    this.#values = values;
    this.#coin = coin;
    this.#exact.fill(0);
    for (const span of this.#spans) {
      this.#learn(span, span.from);
      if (span.to === span.from) continue;
      this.#learn(span, span.to);
      this.#between(span.from, span.to);
    }
  }

  /** What no strip just so wide exceeds; 0 where none has a lay. */
  worth(width: number): number {
    return this.#worth[width];
  }

  /** Learns what a strip of a width is worth exactly. @returns false where that is known */
  refine(width: number): boolean {
    const span = this.#spans.find(({ from, to }) => from <= width && width <= to);
    if (span === undefined || this.#exact[width] === 1) return false;
    this.#learn(span, width);
    const from = this.#exact.lastIndexOf(1, width - 1);
    const to = this.#exact.indexOf(1, width + 1);
    this.#between(from, width);
    this.#between(width, to);
    return true;
  }

  #learn({ lots }: Span, width: number): void {
    const best = this.#best.fill(Number.NEGATIVE_INFINITY);
    best[0] = 0;
    for (const lot of this.#lots.slice(0, lots)) {
      const { piece, along, across } = this.#lays[lot.item];
      const trim = keptUnrounded(along - this.#kerf, width - across - this.#kerf, this.#rule);
      offer(best, lot, (this.#values[piece] + this.#coin * trim) * lot.copies);
    }
    let most = 0;
    for (let filled = 1; filled <= this.#length; filled++) {
      if (!(best[filled] > 0)) continue;
      const end = this.#length - filled - this.#kerf;
      const kept = keptUnrounded(end, width - this.#kerf, this.#rule);
      const worth = best[filled] + this.#coin * kept;
      if (worth > most) most = worth;
    }
    this.#worth[width] = most;
    this.#exact[width] = 1;
  }

  /** The line between two widths. */
  #between(from: number, to: number): void {
    const worth = this.#worth;
    const slope = (worth[to] - worth[from]) / (to - from);
    for (let width = from + 1; width < to; width++) {
      worth[width] = worth[from] + slope * (width - from);
    }
  }
}

/** Offers a lot to what fills each length. */
function offer(best: Float64Array, { size, again }: Lot, worth: number): void {
  const end = best.length;
  const [from, step] = again ? [size, 1] : [end - 1, -1];
  for (let room = from; room >= size && room < end; room += step) {
    const value = best[room - size] + worth;
    if (value > best[room]) best[room] = value;
  }
}

/** Widths from which on another lay fits or another remnant may be kept; ascending. */
function startsOf(
  { length, lays }: StripFamily,
  breadth: number,
  kerf: number,
  { leastLength, leastWidth }: KeepRule,
): readonly number[] {
  const starts = new Set<number>();
  const kept = (across: number, along: number) => {
    if (along < leastWidth) return;
    starts.add(across + kerf + leastWidth);
    starts.add(across + kerf + leastLength);
  };
  for (const { across, along } of lays) {
    starts.add(across);
    kept(across, along - kerf);
  }
  kept(0, length);
  const least = Math.min(...lays.map(({ across }) => across));
  return [...starts].filter((start) => start >= least && start <= breadth).sort((a, b) => a - b);
}
