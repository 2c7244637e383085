import type { BandBook } from '../master/band-book.js';
import { type BandAnswer, type BandDuals, BandMaster } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import { compose } from './compose.js';
import type { SearchGround } from './ground.js';
import { withLikelyBands } from './likely-bands.js';
import type { Planned } from './planned.js';
import { leastFirst, reducedCosts } from './reduced-costs.js';
import { missingWeight, type Partial } from './refill.js';
import { settleOne } from './settle-one.js';
import type { SettledSheets } from './settle-sheets.js';
import { SettledMaster } from './settled-master.js';

export interface BandSettlingRequest {
  /** Likely patterns, many of them. */
  readonly pool: BandBook;
  readonly caps: readonly Cap[];
  /** What going without a piece counts. */
  readonly weights: readonly number[];
  /** The same, 1 on average. */
  readonly losses: readonly number[];
}

const EPSILON = 1e-6;
/** Once no more bands than this are open, the integer master cuts the rest. */
const BANDS_OPEN = 7;
/** The share of the room for spare pieces that settling whole numbers of a band may use up. */
const MAY_LOSE = 0.3;
/** How many broken bands are tried before one is settled, and what may be lost by the first that will do. */
const TRIED = 4;
const LITTLE = 0.0005;
/** How far noise may change the weight of what is broken, as a share. */
const NOISE = 0.6;
/** A linear plan that goes without so much is not broken up further. */
const HOPELESS = 0.6;
/** Bands that an integer master works with, and nodes it may take. */
const BANDS = 800;
const NODES = 150;
/** How far from the best an answer may be by which less is gone without. */
const GOOD_ENOUGH = 0.3;
/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.25;
const ROUNDS_FIRST = 10;
const ROUNDS_EACH = 2;

/**
 * Settles the bands of sheets that are settled already. The fewer spare pieces there is
 * room for, the better each band must fill its slot, so that all bands worth trying
 * can be listed.
 */
export class BandSettling {
  readonly #ground: SearchGround;
  readonly #request: BandSettlingRequest;
  readonly #settled: SettledSheets;
  readonly #book: BandBook;
  readonly #master: SettledMaster;
  /** The linear plan of the bands, none of them settled. */
  readonly #start: BandAnswer;

  private constructor(
    ground: SearchGround,
    request: BandSettlingRequest,
    settled: SettledSheets,
    book: BandBook,
    master: SettledMaster,
    start: BandAnswer,
  ) {
    this.#ground = ground;
    this.#request = request;
    this.#settled = settled;
    this.#book = book;
    this.#master = master;
    this.#start = start;
  }

  /** Solves the linear plan of the bands; undefined where there is no time. */
  static async open(
    ground: SearchGround,
    request: BandSettlingRequest,
    settled: SettledSheets,
  ): Promise<BandSettling | undefined> {
    const { caps, losses, pool } = request;
    const { demand } = ground;
    const { classes } = settled;
    const book = ground.newBook();
    const used = [...settled.sheets.keys()].filter((sheet) => settled.sheets[sheet] > 0);
    // The book's sheets are in the order in which they were taken in.
    book.adopt(settled.book, [], used);
    for (const from of [settled.book, pool]) {
      const fitting = [...from.bands.keys()].filter(
        (band) => book.find(from.slots[from.bands[band].slot]) !== undefined,
      );
      book.adopt(from, fitting, []);
    }
    const objective = { cost: undefined, caps };
    const spare = demand.map(() => 1);
    const asked = { demand, classes, objective, losses, spare, book, closed: true };
    const master = new SettledMaster(ground, asked);
    used.forEach((sheet, index) => {
      master.settleSheet(index, settled.sheets[sheet]);
    });
    const start = await master.solve(ROUNDS_FIRST);
    if (start?.duals !== undefined) {
      return new BandSettling(ground, request, settled, book, master, start);
    }
    master.close();
    return undefined;
  }

  /** What the linear plan of the bands costs; see the sheets'. */
  get cost(): number {
    return this.#start.cost;
  }

  close(): void {
    this.#master.close();
  }

  /**
   * Settles most bands about as the linear plan has them, other ones each time, and
   * the rest by the integer master.
   */
  async settle(random: () => number): Promise<Partial | undefined> {
    const master = this.#master;
    try {
      const last = await this.#settleMost(random);
      return last.duals === undefined ? undefined : await this.#settleRest(last.duals);
    } finally {
      [...master.bands].forEach((count, band) => {
        if (count > 0) master.settleBand(band, -count);
      });
    }
  }

  /** @returns the linear plan then */
  async #settleMost(random: () => number): Promise<BandAnswer> {
    const master = this.#master;
    const most = this.#start.cost + MAY_LOSE * Math.abs(this.#start.cost);
    let answer = this.#start;
    for (let settled = true; settled; ) {
      settled = false;
      for (const band of shuffled(answer.bands, random)) {
        if (openBands(master, answer) <= BANDS_OPEN) return answer;
        const count = Math.floor(answer.bands[band] - (master.bands[band] ?? 0) + EPSILON);
        if (count === 0) continue;
        master.settleBand(band, count);
        const next = await master.solve(ROUNDS_EACH, most);
        if (next !== undefined && next.cost <= most) {
          answer = next;
          settled = true;
        } else {
          master.settleBand(band, -count);
        }
      }
    }
    while (openBands(master, answer) > BANDS_OPEN) {
      const next = await settleOne(master, answer, brokenBands(master, answer, random), {
        tried: TRIED,
        little: LITTLE,
        rounds: ROUNDS_EACH,
      });
      if (next === undefined || next.cost > HOPELESS) return answer;
      answer = next;
    }
    return answer;
  }

  async #settleRest(duals: BandDuals): Promise<Partial | undefined> {
    const ground = this.#ground;
    const { engines, deadline, effort } = ground;
    const { caps, weights } = this.#request;
    const { left, needed, bands: settled } = this.#master;
    const book = withLikelyBands(ground, this.#book, left, duals);
    const here = (slot: number) => book.find(this.#book.slots[slot]) ?? 0;
    const slotDuals: number[] = [];
    const slotsNeeded: number[] = [];
    this.#book.slots.forEach((_, slot) => {
      slotDuals[here(slot)] = duals.slots[slot] ?? 0;
      slotsNeeded[here(slot)] = needed[slot] ?? 0;
    });
    const master = new BandMaster({
      demand: left,
      classes: this.#settled.classes,
      objective: { cost: undefined, caps },
      penalties: weights,
      packs: true,
      needed: slotsNeeded,
      book,
      engines,
    });
    try {
      const costs = reducedCosts(book, { ...duals, slots: slotDuals }, (_, copies) => copies);
      const ofUse = costs.bands.map((cost, band) =>
        book.bands[band].counts.every(([piece, copies]) => copies <= left[piece])
          ? cost
          : Number.POSITIVE_INFINITY,
      );
      master.addFromBook(undefined, leastFirst(ofUse, BANDS));
      this.#book.sheets.forEach((_, sheet) => {
        master.setLeastOfSheet(sheet, this.#master.sheets[sheet] ?? 0);
      });
      effort.integerMasters++;
      const answer = await master.solve({
        integer: true,
        seconds: deadline.left() * SHARE_OF_TIME,
        nodes: NODES,
        gap: GOOD_ENOUGH,
      });
      if (typeof answer === 'string') return undefined;
      const bands = book.bands.map((_, band) => (settled[band] ?? 0) + answer.bands[band]);
      const planned = compose(book, { sheets: answer.sheets, bands }).map(
        ([pattern, count]): Planned => ({ pattern, count }),
      );
      return { planned, missing: missingWeight(ground.demand, planned, weights) };
    } finally {
      master.close();
    }
  }
}

/** The bands that are broken, most first. */
function brokenBands(
  master: SettledMaster,
  answer: BandAnswer,
  random: () => number,
): readonly number[] {
  const open: { band: number; part: number }[] = [];
  answer.bands.forEach((amount, band) => {
    const left = amount - (master.bands[band] ?? 0);
    if (left > EPSILON) open.push({ band, part: left * (1 + NOISE * (random() - 0.5)) });
  });
  return open.sort((a, b) => b.part - a.part || a.band - b.band).map(({ band }) => band);
}

/** How many bands the linear plan has that are not settled. */
function openBands(master: SettledMaster, { bands }: BandAnswer): number {
  return bands.reduce((sum, amount, band) => sum + amount - (master.bands[band] ?? 0), 0);
}

/** The bands that there are at least one of, in any order. */
function shuffled(amounts: readonly number[], random: () => number): readonly number[] {
  return [...amounts.keys()]
    .filter((band) => amounts[band] >= 1 - EPSILON)
    .map((band) => ({ band, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ band }) => band);
}
