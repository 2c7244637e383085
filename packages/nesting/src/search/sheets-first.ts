import type { BandBook } from '../master/band-book.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import type { Partial, RefillGuide } from './refill.js';
import { BandSettling } from './settle-bands.js';
import { SheetSettling } from './settle-sheets.js';

/** What the linear plan of the whole problem costs, and what a piece is worth there, on average of the kinds. */
export interface LinearPlan {
  readonly cost: number;
  readonly meanWorth: number;
}

/** With room for less than so many spare pieces, whole bands are sought by exact means first. */
const LITTLE_ROOM = 0.5;
/** How often bands are settled of the same sheets: one after another by linear plans, or by decimation. */
const TRIES = 2;
const TRIES_BY_DECIMATION = 3;
/** After so many plans in vain, sheets are sought that whole bands are likely to fill, which takes longer. */
const VAIN_BY_ROOM = 2;
/** With room for so many spare pieces in the linear plan, sheets and bands can mostly be settled. */
const MANY_SPARE = 3;
/** What share of it is enough, and how often the cost is raised until there is so much. */
const NEARLY = 0.9;
const MOST_RAISED = 4;
/** How much less room is aimed for after a success, and more after a failure. */
const AFTER_SUCCESS = 0.5;
const AFTER_FAILURE = 1.25;

/**
 * Plans for orders with many of each piece: whole sheets are settled first, while their
 * bands may be broken, and whole bands after that.
 */
export class SheetsFirst {
  readonly #ground: SearchGround;
  readonly #incumbent: Incumbent;
  readonly #guide: RefillGuide;
  /** Likely patterns, many of them. */
  readonly #pool: BandBook;
  readonly #linear: LinearPlan;
  readonly #random: () => number;
  readonly #settlings = new Map<number, SheetSettling | undefined>();
  /** For how many spare pieces there is to be room. */
  #spare = MANY_SPARE;
  /** Plans in a row that lacked a piece. */
  #vain = 0;

  constructor(
    ground: SearchGround,
    incumbent: Incumbent,
    guide: RefillGuide,
    pool: BandBook,
    linear: LinearPlan,
    random: () => number,
  ) {
    this.#ground = ground;
    this.#incumbent = incumbent;
    this.#guide = guide;
    this.#pool = pool;
    this.#linear = linear;
    this.#random = random;
  }

  /**
   * A plan for little more than the bound, lacking as little as was found; another one each
   * time. It aims the higher the better the plan is by now.
   */
  async plan(): Promise<Partial | undefined> {
    const target = await this.#target();
    const partial = await this.#planFor(target);
    const found = partial?.missing === 0;
    this.#spare *= found ? AFTER_SUCCESS : AFTER_FAILURE;
    this.#vain = found ? 0 : this.#vain + 1;
    return partial;
  }

  /** A cost that leaves room for spare pieces, since without any there is seldom a plan. */
  async #target(): Promise<number> {
    const { cost, meanWorth } = this.#linear;
    const kinds = this.#kinds;
    let target = this.#incumbent.costFrom(cost + this.#spare * meanWorth);
    for (let raised = 0; raised < MOST_RAISED && target < this.#incumbent.target; raised++) {
      const settling = await this.#settling(target);
      const lacking = this.#spare - (settling?.linearRoom ?? 0) * kinds;
      if (lacking <= (1 - NEARLY) * this.#spare) break;
      target = this.#incumbent.costFrom(target + Math.max(1, lacking * meanWorth));
    }
    return target;
  }

  async #planFor(target: number): Promise<Partial | undefined> {
    const settling = await this.#settling(target);
    const likely =
      this.#vain >= VAIN_BY_ROOM ? await settling?.settleLikely(this.#random) : undefined;
    const sheets = likely ?? (await settling?.settle(this.#random));
    this.#incumbent.tell('local search');
    if (sheets === undefined || this.#left() <= 0) return undefined;
    // What lacks a piece is of no use where the next sheet would make it cost as much as the best.
    if (sheets.room < 0 && target >= this.#incumbent.target) return undefined;
    const bands = await BandSettling.open(this.#ground, this.#request(target), sheets);
    if (bands === undefined) return undefined;
    try {
      return await (likely === undefined ? this.#settle(bands) : this.#decimate(bands));
    } finally {
      bands.close();
    }
  }

  async #settling(target: number): Promise<SheetSettling | undefined> {
    if (!this.#settlings.has(target)) {
      const opened = await SheetSettling.open(this.#ground, this.#request(target));
      this.#settlings.set(target, opened);
    }
    return this.#settlings.get(target);
  }

  /** The best of several tries, or of one where pieces must be gone without anyway. */
  async #settle(bands: BandSettling): Promise<Partial | undefined> {
    const filled = bands.room * this.#kinds < LITTLE_ROOM ? await bands.fill() : undefined;
    if (filled === 'none') return undefined;
    if (filled !== undefined) return filled;
    const tries = bands.room > 0 ? TRIES : 1;
    return this.#best(tries, () => bands.settle(this.#random));
  }

  #decimate(bands: BandSettling): Promise<Partial | undefined> {
    return this.#best(TRIES_BY_DECIMATION, () => bands.decimate(this.#random));
  }

  async #best(
    tries: number,
    plan: () => Promise<Partial | undefined>,
  ): Promise<Partial | undefined> {
    let best: Partial | undefined;
    for (let tried = 0; tried < tries && this.#left() > 0; tried++) {
      const found = await plan();
      this.#incumbent.tell('local search');
      if (found === undefined) continue;
      if (found.missing < (best?.missing ?? Number.POSITIVE_INFINITY)) best = found;
      if (found.missing === 0) break;
    }
    return best;
  }

  #request(target: number) {
    const { objective } = this.#ground;
    const { weights } = this.#guide;
    return {
      pool: this.#pool,
      caps: [...objective.caps, { measure: this.#incumbent.measure, atMost: target }],
      weights,
      losses: lossesOf(this.#guide),
    };
  }

  get #kinds(): number {
    return this.#ground.demand.filter((quantity) => quantity > 0).length;
  }

  #left(): number {
    return this.#ground.deadline.left();
  }
}

/** For each piece, what going without one counts, 1 on average. */
export function lossesOf({ weights }: Pick<RefillGuide, 'weights'>): readonly number[] {
  const mean = weights.reduce((sum, weight) => sum + weight, 0) / weights.length;
  return weights.map((weight) => weight / mean);
}
