import { keptUnrounded } from '../pattern/kept-value.js';
import type { KeepRule } from '../problem.js';
import type { StripFamily, StripLay } from './strip-family.js';
import { StripFilling } from './strip-filling.js';

/** Widths between which what may be kept of a strip changes by its size alone. */
interface Span {
  /** Gross ticks, both ends included. */
  readonly from: number;
  readonly to: number;
  /** So many of the lays, the first ones, may lie in every strip so wide. */
  readonly lays: number;
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
  readonly #spans: readonly Span[];
  readonly #kerf: number;
  readonly #rule: KeepRule;
  readonly #filling: StripFilling;
  /** Of each lay in the strip looked at. */
  readonly #worths: Float64Array;
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
    this.#lays = lays;
    const starts = startsOf(family, breadth, kerf, rule);
    this.#spans = starts.map((from, index): Span => {
      const wider = lays.findIndex(({ across }) => across > from);
      return {
        from,
        to: (starts[index + 1] ?? breadth + 1) - 1,
        lays: wider < 0 ? lays.length : wider,
      };
    });
    const most = lays.map(({ piece }) => demand[piece]);
    const anyRest = { kerf, narrowest: 1, longestCut: Number.POSITIVE_INFINITY };
    this.#filling = new StripFilling(lays, most, length, anyRest);
    this.#worths = new Float64Array(lays.length);
    this.#worth = new Float64Array(breadth + 1);
    this.#exact = new Uint8Array(breadth + 1);
  }

  /** Steps of filling strips that it took so far. */
  get steps(): number {
    return this.#filling.steps;
  }

  /**
   * @param values one for each piece, at least 0
   * @param coin what a coin of kept remnants is worth in the same unit
   * @param mostSteps after which it gives up
   * @returns false where it gave up
   */
  solve(values: ArrayLike<number>, coin: number, mostSteps: number): boolean {
    const last = this.steps + mostSteps;
    this.#values = values;
    this.#coin = coin;
    this.#exact.fill(0);
    for (const span of this.#spans) {
      if (this.steps > last) return false;
      this.#learn(span, span.from);
      if (span.to === span.from) continue;
      this.#learn(span, span.to);
      this.#between(span.from, span.to);
    }
    return true;
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

  #learn(span: Span, width: number): void {
    const worths = this.#worths.fill(0);
    for (let lay = 0; lay < span.lays; lay++) {
      const { piece, along, across } = this.#lays[lay];
      const trim = keptUnrounded(along - this.#kerf, width - across - this.#kerf, this.#rule);
      worths[lay] = this.#values[piece] + this.#coin * trim;
    }
    // A longer end is worth more by length.
    const end = keptUnrounded(this.#length - this.#kerf, width - this.#kerf, this.#rule);
    const endPerTick = (this.#coin * end) / this.#length;
    const best = this.#filling.fill({ worths, endPerTick });
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
