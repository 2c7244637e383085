import type { BandBook } from '../master/band-book.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import type { Partial, RefillGuide } from './refill.js';
import { BandSettling } from './settle-bands.js';
import { type Breadth, type SettledSheets, SheetSettling } from './settle-sheets.js';

/** Patterns that sheets are chosen from, in turn: few are looked through sooner. */
const BREADTHS: readonly [Breadth, ...Breadth[]] = [
  { sheets: 250, bands: 500 },
  { sheets: 400, bands: 800 },
  { sheets: 150, bands: 400 },
];
const NODES = 1;
/** Rounds that settle sheets by diving, and how often all but the first do. */
const ROUNDS_OF_DIVES = 2;
const DIVES = 4;
/** How often bands are settled, of sheets that were settled well, and in little time. */
const TRIES = 6;
const TRIES_AFTER_DIVES = 3;

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
  readonly #settlings = new Map<number, SheetSettling | undefined>();

  constructor(ground: SearchGround, incumbent: Incumbent, guide: RefillGuide, pool: BandBook) {
    this.#ground = ground;
    this.#incumbent = incumbent;
    this.#guide = guide;
    this.#pool = pool;
  }

  /**
   * A plan that keeps to a cost, lacking as little as was found.
   * @param round the first settles sheets in little time, those after it well
   */
  async plan(target: number, round: number, random: () => number): Promise<Partial | undefined> {
    const request = this.#request(target);
    if (!this.#settlings.has(target)) {
      this.#settlings.set(target, await SheetSettling.open(this.#ground, request));
    }
    const settling = this.#settlings.get(target);
    const sheets = settling && (await settledIn(settling, round, random));
    this.#incumbent.tell('local search');
    if (sheets === undefined || this.#left() <= 0) return undefined;
    const bands = await BandSettling.open(this.#ground, request, sheets);
    if (bands === undefined) return undefined;
    const tries = round < ROUNDS_OF_DIVES ? TRIES_AFTER_DIVES : TRIES;
    try {
      return await this.#settle(bands, tries, random);
    } finally {
      bands.close();
    }
  }

  /** The best of several tries, or of one where pieces must be gone without anyway. */
  async #settle(
    bands: BandSettling,
    most: number,
    random: () => number,
  ): Promise<Partial | undefined> {
    let best: Partial | undefined;
    const tries = bands.cost < 0 ? most : 1;
    for (let tried = 0; tried < tries && this.#left() > 0; tried++) {
      const found = await bands.settle(random);
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

async function settledIn(
  settling: SheetSettling,
  round: number,
  random: () => number,
): Promise<SettledSheets | undefined> {
  const [first] = BREADTHS;
  const after = round - ROUNDS_OF_DIVES;
  if (after >= 0) {
    return settling.byIntegerMaster(
      BREADTHS[Math.floor(after / 2) % BREADTHS.length],
      NODES,
      after % 2 === 1,
    );
  }
  let best: SettledSheets | undefined;
  for (let dive = 0; dive < (round === 0 ? 1 : DIVES); dive++) {
    const sheets = await settling.byDiving(first, random);
    if (sheets !== undefined && sheets.cost < (best?.cost ?? Number.POSITIVE_INFINITY)) {
      best = sheets;
    }
  }
  return best;
}
