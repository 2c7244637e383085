import type { BandBook } from '../master/band-book.js';
import { kindsWanted } from '../master/kinds-wanted.js';
import { ByTurns } from './by-turns.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import type { Partial, RefillGuide } from './refill.js';
import { BandSettling } from './settle-bands.js';
import { SheetSettling } from './settle-sheets.js';

/** The linear plan of the whole problem. */
export interface LinearPlan {
  readonly cost: number;
  /** What a piece is worth, on average of the kinds. */
  readonly meanWorth: number;
  readonly sheets: number;
}

/** Whole numbers of so few sheets may be so far from the linear plan that other patterns suit them. */
const FEW_SHEETS = 40;

/** With room for less than so many spare pieces, decimation hardly ever finds whole bands. */
const LITTLE_ROOM = 0.5;
/** So many spare pieces may lack of sheets, since more bands may suit them than they were sought with. */
const MAY_LACK = 0.3;
/** How often bands are decimated of the same sheets that whole bands are likely to fill. */
const TRIES = 3;
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
  /** Likely patterns; many of them where there are many sheets. */
  readonly #pool: BandBook;
  readonly #linear: LinearPlan;
  readonly #random: () => number;
  readonly #settlings = new Map<number, SheetSettling | undefined>();
  /** For how many spare pieces there is to be room. */
  #spare = MANY_SPARE;
  /** Plans in a row that lacked a piece. */
  #vain = 0;
  #turns = inTurn();

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
    const partial = await this.#planFor(await this.#target());
    const found = partial?.missing === 0;
    this.#spare *= found ? AFTER_SUCCESS : AFTER_FAILURE;
    this.#vain = found ? 0 : this.#vain + 1;
    if (found) this.#turns = inTurn();
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
    const way = this.#vain < VAIN_BY_ROOM ? 'room' : this.#turns.next;
    const likely = way === 'likely' ? await settling?.settleLikely(this.#random) : undefined;
    const sheets = likely ?? (await settling?.settle(this.#random));
    this.#incumbent.tell('local search');
    if (this.#vain >= VAIN_BY_ROOM) {
      if (way === 'likely') this.#turns.tried('likely', likely?.room);
      if (likely === undefined) this.#turns.tried('room', sheets?.room);
    }
    if (sheets === undefined || this.#left() <= 0) return undefined;
    // What lacks a piece is of no use where the next sheet would make it cost as much as the best.
    const last = target >= this.#incumbent.target;
    if (last && sheets.room * this.#kinds < -MAY_LACK) return undefined;
    const bands = await BandSettling.open(this.#ground, this.#request(target), sheets);
    if (bands === undefined) return undefined;
    try {
      if (last && bands.room < 0) return undefined;
      return await this.#settle(bands, likely !== undefined);
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

  /**
   * By exact means where there is room for less than a spare piece, which decimation finds sooner
   * where there is not so little; by linear plans where there is more.
   * @param likely whether whole bands are likely to fill the sheets
   */
  async #settle(bands: BandSettling, likely: boolean): Promise<Partial | undefined> {
    const { tight, room } = bands;
    if (room <= 0) return bands.settle(this.#random);
    const little = room * this.#kinds < LITTLE_ROOM;
    const decimated = little
      ? undefined
      : await this.#decimate(bands, likely && !tight ? TRIES : 1);
    if (decimated?.missing === 0) return decimated;
    if (tight) {
      const filled = await bands.fill();
      if (filled === 'none') return undefined;
      return filled ?? (little ? this.#decimate(bands, 1) : decimated);
    }
    if (likely) return decimated;
    const best = await bands.settle(this.#random);
    if (best?.missing === 0 || decimated === undefined) return best;
    return fewerMissing(best, await this.#decimate(bands, 1));
  }

  /** The best of several tries; none after one that gives up, which the others would as well. */
  async #decimate(bands: BandSettling, tries = TRIES): Promise<Partial | undefined> {
    let best: Partial | undefined;
    for (let tried = 0; tried < tries && best?.missing !== 0 && this.#left() > 0; tried++) {
      const found = await bands.decimate(this.#random);
      this.#incumbent.tell('local search');
      if (found === undefined) break;
      best = fewerMissing(best, found);
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
      fewSheets: fewSheets(this.#linear),
    };
  }

  get #kinds(): number {
    return kindsWanted(this.#ground.demand);
  }

  #left(): number {
    return this.#ground.deadline.left();
  }
}

/** What sheets are sought once plans were in vain: those that whole bands are likely to fill, or that leave much room. */
function inTurn(): ByTurns<'likely' | 'room'> {
  return new ByTurns<'likely' | 'room'>('likely', 'room');
}

/** Whether patterns are listed for settled numbers of sheets, so that the pool needs hold but few. */
export function fewSheets({ sheets }: LinearPlan): boolean {
  return sheets <= FEW_SHEETS;
}

function fewerMissing(one: Partial | undefined, other: Partial | undefined): Partial | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return other.missing < one.missing ? other : one;
}

/** For each piece, what going without one counts, 1 on average. */
export function lossesOf({ weights }: Pick<RefillGuide, 'weights'>): readonly number[] {
  const mean = weights.reduce((sum, weight) => sum + weight, 0) / weights.length;
  return weights.map((weight) => weight / mean);
}
