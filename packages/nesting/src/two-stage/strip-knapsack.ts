import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, mayRest, netRest } from '../pattern/limits.js';
import { type Lot, lotsOf, offerLot, walkBack } from './lots.js';
import { EVERY_TICK, type Measure, stepsOf, stepsWithin } from './measure.js';
import type { StripFamily, StripWidth } from './strip-family.js';
import { trimValue } from './trim-value.js';
import { TrimmedStrip } from './trimmed-strip.js';

/** What is taken where there is nothing to take: shared, since widths may be hundreds of thousands. */
const NONE_TAKEN = new Uint8Array(0);

/** Lays and how many of each, as [index of the lay, copies at least 1], ascending. */
export type LayCounts = readonly (readonly [number, number])[];

/**
 * Finds the most valuable strip of every width of a family in one pass over its
 * lays in order of width: the knapsack over the length is kept lay by lay, and a
 * width reads it where its lays end (Gilmore and Gomory 1965, "Multistage cutting
 * stock problems of two and more dimensions"). Lays that a width takes beyond
 * those are added to a copy; where lays have values of their own, it starts afresh.
 */
export class StripKnapsack {
  readonly #family: StripFamily;
  readonly #limits: Limits;
  readonly #keep: KeepValue | undefined;
  readonly #measure: Measure;
  /** Steps of the measure along a strip. */
  readonly #room: number;
  readonly #trunk: readonly Lot[];
  /** Lots of the trunk that belong to the first k lays. */
  readonly #trunkEnd: readonly number[];
  readonly #trunkTaken: Uint8Array;
  readonly #plans: readonly WidthPlan[];
  readonly #trimmed: TrimmedStrip;
  readonly #best: Float64Array;
  readonly #copy: Float64Array;
  readonly #worth: Float64Array;
  /** Steps at which the best filling of each width ends; -1 for none. */
  readonly #fill: Int32Array;

  /**
   * @param most for each lay, how many copies are of use
   * @param keep absent where remnants have no value
   * @param trimmedEvery only for one of so many widths is minded what remnants beside lays are
   *   worth; the worth of others is then but what they hold, and the end
   * @param measure along the strips; no lay may be less than a step of it
   */
  constructor(
    family: StripFamily,
    most: readonly number[],
    limits: Limits,
    keep: KeepValue | undefined,
    trimmedEvery = 1,
    measure = EVERY_TICK,
  ) {
    this.#family = family;
    this.#limits = limits;
    this.#keep = keep;
    this.#measure = measure;
    const room = stepsWithin(family.length, measure, limits);
    this.#room = room;
    const lots = family.lays.map((lay, i) => lotsOf(i, stepsOf(lay.along, measure), most[i], room));
    const ends = [0];
    for (const own of lots) ends.push(ends[ends.length - 1] + own.length);
    this.#trunk = lots.flat();
    this.#trunkEnd = ends;
    this.#trunkTaken = new Uint8Array(this.#trunk.length * (room + 1));
    this.#plans = widthPlans(family, limits, keep, trimmedEvery).map((plan) => {
      const branch = plan.inPlace || plan.fresh ? [] : plan.added.flatMap((lay) => lots[lay]);
      const taken = branch.length === 0 ? NONE_TAKEN : new Uint8Array(branch.length * (room + 1));
      return { ...plan, branch, taken };
    });
    this.#trimmed = new TrimmedStrip(family, most, limits, keep, measure);
    this.#best = new Float64Array(room + 1);
    this.#copy = new Float64Array(room + 1);
    this.#worth = new Float64Array(family.widths.length);
    this.#fill = new Int32Array(family.widths.length);
  }

  /**
   * @param values one for each lay, at least 0
   * @param coin what a coin of kept remnants is worth in the same unit
   */
  solve(values: ArrayLike<number>, coin: number): void {
    const { widths } = this.#family;
    this.#trimmed.setValues(Float64Array.from(values), coin);
    const slack = this.#anyRest();
    const best = this.#best.fill(slack ? 0 : Number.NEGATIVE_INFINITY);
    best[0] = 0;
    this.#trunkTaken.fill(0);
    let reached = 0;
    const advance = (lays: number) => {
      for (; reached < this.#trunkEnd[lays]; reached++) {
        const lot = this.#trunk[reached];
        const worth = values[lot.item] * lot.copies;
        offerLot(best, this.#trunkTaken, reached * best.length, lot, worth);
      }
    };
    widths.forEach((width, w) => {
      const plan = this.#plans[w];
      if (width.uncut) {
        this.#single(w, width, values, coin);
        return;
      }
      if (plan.inPlace) {
        advance(plan.trunk);
        this.#read(w, width, best, coin);
        return;
      }
      if (plan.fresh) {
        this.#read(w, width, this.#trimmed.fill(width), coin);
        return;
      }
      advance(plan.trunk);
      const copy = this.#copy;
      copy.set(best);
      plan.taken.fill(0);
      plan.branch.forEach((lot, index) => {
        offerLot(copy, plan.taken, index * copy.length, lot, values[lot.item] * lot.copies);
      });
      this.#read(w, width, copy, coin);
    });
  }

  /** The most that a strip of the width can be worth, its remnants included. */
  worth(width: number): number {
    return this.#worth[width];
  }

  /** The lays of a strip that is worth so much; empty where none is worth anything. */
  counts(width: number): LayCounts {
    const counts = new Map<number, number>();
    const plan = this.#plans[width];
    const fill = this.#fill[width];
    if (fill < 0) return [];
    if (this.#family.widths[width].uncut) return [[fill, 1]];
    if (plan.fresh) {
      this.#trimmed.count(this.#family.widths[width], fill, counts);
    } else {
      const at = walkBack(plan.branch, plan.taken, fill, counts);
      const lots = this.#trunk.slice(0, this.#trunkEnd[plan.trunk]);
      const used = this.#trunkTaken.subarray(0, lots.length * (this.#room + 1));
      walkBack(lots, used, at, counts);
    }
    return [...counts].sort((a, b) => a[0] - b[0]);
  }

  /** Whether every rest is allowed and none has a value, so that fillings need not be told apart by size. */
  #anyRest(): boolean {
    return this.#keep === undefined && this.#limits.narrowest <= 1;
  }

  #read(w: number, width: StripWidth, best: Float64Array, coin: number): void {
    const { length } = this.#family;
    const { step } = this.#measure;
    const room = this.#room;
    this.#worth[w] = 0;
    this.#fill[w] = -1;
    if (this.#anyRest()) {
      this.#worth[w] = best[room];
      this.#fill[w] = best[room] > 0 ? room : -1;
      return;
    }
    for (let filled = 1; filled <= room; filled++) {
      const rest = length - filled * step;
      if (best[filled] <= 0 || !mayRest(rest, this.#limits)) continue;
      const end = netRest(rest, this.#limits);
      const kept = this.#keep?.(end, width.extent - this.#limits.kerf) ?? 0;
      const worth = best[filled] + coin * kept;
      if (worth > this.#worth[w]) {
        this.#worth[w] = worth;
        this.#fill[w] = filled;
      }
    }
  }

  /** A strip that cannot be cut to length holds one lay that fills it. */
  #single(w: number, width: StripWidth, values: ArrayLike<number>, coin: number): void {
    this.#worth[w] = 0;
    this.#fill[w] = -1;
    for (const lay of width.fitting) {
      const worth = values[lay] + coin * this.#trim(width, lay);
      if (worth > this.#worth[w]) {
        this.#worth[w] = worth;
        this.#fill[w] = lay;
      }
    }
  }

  #trim({ extent }: StripWidth, lay: number): number {
    return trimValue(this.#family.lays[lay], extent, this.#limits, this.#keep);
  }
}

interface WidthSteps {
  /** The first so many lays of the trunk are read. */
  readonly trunk: number;
  /** True where the trunk alone is read, which then goes on to the next width. */
  readonly inPlace: boolean;
  /** True where nothing is taken from the trunk. */
  readonly fresh: boolean;
  /** Lays that are added to the trunk; none where it starts afresh. */
  readonly added: readonly number[];
}

interface WidthPlan extends WidthSteps {
  readonly branch: readonly Lot[];
  readonly taken: Uint8Array;
}

function widthPlans(
  family: StripFamily,
  limits: Limits,
  keep: KeepValue | undefined,
  trimmedEvery: number,
): readonly WidthSteps[] {
  const maySpare = sparingWidths(family, limits, keep);
  return family.widths.map((width, w) => {
    const { leading, fitting } = width;
    if (w % trimmedEvery === 0 && maySpare(width)) {
      return { trunk: 0, inPlace: false, fresh: true, added: [] };
    }
    const next = family.widths.slice(w + 1).find((other) => !other.uncut);
    const end = leading + fitting.length;
    const straightOn = fitting.every((lay, i) => lay === leading + i);
    const inPlace = straightOn && (next === undefined || next.leading >= end);
    return { trunk: inPlace ? end : leading, inPlace, fresh: false, added: fitting };
  });
}

/** Tells in which widths something is worth keeping that is trimmed off beside a lay. */
function sparingWidths(
  { lays }: StripFamily,
  limits: Limits,
  keep: KeepValue | undefined,
): (width: StripWidth) => boolean {
  if (keep === undefined) return () => false;
  const longest = Math.max(0, ...lays.map(({ along }) => along));
  const narrowest = Math.min(...lays.map(({ across }) => across));
  const most = { piece: 0, crosswise: false, along: longest, across: narrowest };
  return ({ extent, leading, fitting }) => {
    // Nothing that is smaller is worth more.
    if (trimValue(most, extent, limits, keep) === 0) return false;
    const spares = (lay: number) => trimValue(lays[lay], extent, limits, keep) > 0;
    for (let lay = 0; lay < leading; lay++) if (spares(lay)) return true;
    return fitting.some(spares);
  };
}
