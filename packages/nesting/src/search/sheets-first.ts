import type { BandBook } from '../master/band-book.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import type { Partial, RefillGuide } from './refill.js';
import { BandSettling } from './settle-bands.js';
import { SheetSettling } from './settle-sheets.js';

/** How often bands are settled of the same sheets. */
const TRIES = 2;
/** Room of the linear plan that sheets can mostly be settled with at once. */
const MUCH_ROOM = 0.1;

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
  readonly #random: () => number;
  readonly #settlings = new Map<number, SheetSettling | undefined>();
  #leastFirst: boolean | undefined;

  constructor(
    ground: SearchGround,
    incumbent: Incumbent,
    guide: RefillGuide,
    pool: BandBook,
    random: () => number,
  ) {
    this.#ground = ground;
    this.#incumbent = incumbent;
    this.#guide = guide;
    this.#pool = pool;
    this.#random = random;
  }

  /**
   * A plan for the least cost or the next, lacking as little as was found; another one each
   * time.
   */
  async plan(round: number): Promise<Partial | undefined> {
    const target = await this.#target(round);
    const settling = await this.#settling(target);
    const sheets = await settling?.settle(this.#random);
    this.#incumbent.tell('local search');
    if (sheets === undefined || this.#left() <= 0) return undefined;
    // What lacks a piece is of no use where the next sheet would make it cost as much as the best.
    if (sheets.room < 0 && target >= this.#incumbent.target) return undefined;
    const bands = await BandSettling.open(this.#ground, this.#request(target), sheets);
    if (bands === undefined) return undefined;
    try {
      return await this.#settle(bands);
    } finally {
      bands.close();
    }
  }

  /**
   * The least cost and the next by turns: first the least where sheets can likely be settled
   * for it, so that nothing is lost by aiming high.
   */
  async #target(round: number): Promise<number> {
    const { leastCost, nearBound } = this.#incumbent;
    if (leastCost === nearBound) return leastCost;
    this.#leastFirst ??= ((await this.#settling(leastCost))?.linearRoom ?? 0) >= MUCH_ROOM;
    return (round % 2 === 0) === this.#leastFirst ? leastCost : nearBound;
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
    let best: Partial | undefined;
    const tries = bands.cost < 0 ? TRIES : 1;
    for (let tried = 0; tried < tries && this.#left() > 0; tried++) {
      const found = await bands.settle(this.#random);
      this.#incumbent.tell('local search');
      if (found === undefined) continue;
      if (found.missing < (best?.missing ?? Number.POSITIVE_INFINITY)) best = found;
      if (found.missing === 0) break;
    }
    return best;
  }

  #request(target: number) {
    const { objective, demand } = this.#ground;
    const { weights } = this.#guide;
    const mean = weights.reduce((sum, weight) => sum + weight, 0) / demand.length;
    return {
      pool: this.#pool,
      caps: [...objective.caps, { measure: this.#incumbent.measure, atMost: target }],
      weights,
      losses: weights.map((weight) => weight / mean),
    };
  }

  #left(): number {
    return this.#ground.deadline.left();
  }
}
