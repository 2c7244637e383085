import type { BandBook } from '../master/band-book.js';
import { type BandAnswer, type BandDuals, BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { coinWorth } from '../master/exact-bound.js';
import type { Objective } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';
import { bestDivisions } from './sheet-divisions.js';

export interface SettledMasterRequest {
  readonly demand: readonly number[];
  readonly classes: readonly StockClass[];
  readonly objective: Objective;
  /** For each piece, what going without one counts. */
  readonly losses: readonly number[];
  /** See the master's; absent where spare pieces count nothing. */
  readonly spare?: readonly number[];
  /** Patterns to start from; it takes in those that come up. */
  readonly book: BandBook;
  /** True where no sheet is open any more, so that only bands in the slots of the book are of use. */
  readonly closed?: boolean;
}

/** A band or a division must gain this share of a coin to be worth a column. */
const LEAST_GAIN = 1e-7;

/**
 * A linear master some of whose bands and sheets are settled, which prices fresh
 * patterns for what is still open.
 */
export class SettledMaster {
  readonly #ground: SearchGround;
  readonly #request: SettledMasterRequest;
  readonly #master: BandMaster;
  /** By index in the book, how many are settled. */
  readonly bands: number[] = [];
  readonly sheets: number[] = [];
  /** Copies of each piece that the settled bands leave; below 0 where they cut too many. */
  readonly #open: number[];
  #classes: readonly StockClass[];

  constructor(ground: SearchGround, request: SettledMasterRequest) {
    this.#ground = ground;
    this.#request = request;
    this.#open = [...request.demand];
    this.#classes = request.classes;
    this.#master = new BandMaster({
      ...request,
      penalties: request.losses,
      engines: ground.engines,
    });
  }

  /**
   * Settles so many of a band. Bands that hold more of a piece than is left are of no
   * use any more, though a part of one might look so in a linear plan.
   */
  settleBand(band: number, count: number): void {
    const { book } = this.#request;
    // Bands that came up in a last round are not in the master yet.
    this.#master.addFromBook();
    this.bands[band] = (this.bands[band] ?? 0) + count;
    const { counts } = book.bands[band];
    for (const [piece, copies] of counts) this.#open[piece] -= copies * count;
    const fewer = new Set(counts.map(([piece]) => piece));
    book.bands.forEach((other, index) => {
      if (index === band || other.counts.some(([piece]) => fewer.has(piece))) {
        const ofUse = other.counts.every(([piece, copies]) => copies <= this.#open[piece]);
        this.#master.setBand(index, this.bands[index] ?? 0, ofUse);
      }
    });
  }

  /** Takes exactly so many of a supply. */
  settleSupply(stockClass: number, supply: number, count: number): void {
    this.setSupplies(
      this.#classes.map((entry, g) =>
        g === stockClass
          ? {
              ...entry,
              supplies: entry.supplies.map((item, t) =>
                t === supply ? { ...item, count, least: count } : item,
              ),
            }
          : entry,
      ),
    );
  }

  setSupplies(classes: readonly StockClass[]): void {
    this.#classes = classes;
    this.#master.setSupplies(classes);
  }

  get classes(): readonly StockClass[] {
    return this.#classes;
  }

  settleSheet(sheet: number, count: number): void {
    this.#master.addFromBook();
    this.sheets[sheet] = (this.sheets[sheet] ?? 0) + count;
    this.#master.setLeastOfSheet(sheet, this.sheets[sheet]);
  }

  /** Copies of each piece that the settled bands leave. */
  get left(): readonly number[] {
    return this.#open.map((count) => Math.max(0, count));
  }

  /** By slot, how many settled bands need one. */
  get needed(): readonly number[] {
    const { book } = this.#request;
    const needed: number[] = [];
    this.bands.forEach((count, band) => {
      const { slot } = book.bands[band];
      needed[slot] = (needed[slot] ?? 0) + count;
    });
    return needed;
  }

  /** The linear plan before anything is settled; undefined where there is none in time. */
  async open(mostRounds: number): Promise<BandAnswer | undefined> {
    const { effort, deadline } = this.#ground;
    const { demand } = this.#request;
    const { answer, rounds } = await solveLinear({
      ...this.#ground,
      ...this.#request,
      pricer: this.#ground.pricerFor(demand),
      master: this.#master,
      enough: () => false,
      mostRounds,
      deadline,
    });
    effort.rounds += rounds;
    return answer;
  }

  /**
   * The linear plan with what is settled so far; undefined where there is none in time.
   * @param enough a cost that is good enough without fresh patterns
   */
  async solve(
    mostRounds: number,
    enough = Number.NEGATIVE_INFINITY,
  ): Promise<BandAnswer | undefined> {
    const { deadline, effort } = this.#ground;
    let answer: BandAnswer | undefined;
    for (let round = 1; ; round++) {
      if (deadline.left() <= 0) return undefined;
      this.#master.addFromBook();
      const solved = await this.#master.solve({ integer: false, seconds: deadline.left() });
      effort.rounds++;
      if (typeof solved === 'string' || solved.duals === undefined) return answer;
      answer = solved;
      if (round === mostRounds || solved.cost <= enough) return answer;
      if (!this.#addFresh(solved.duals)) return answer;
    }
  }

  close(): void {
    this.#master.close();
  }

  /** @returns whether any pattern came up that gains */
  #addFresh(duals: BandDuals): boolean {
    const { book, closed } = this.#request;
    const before = book.bands.length + book.sheets.length;
    this.#addPriced(duals);
    if (closed !== true) {
      for (const division of bestDivisions(this.#ground, book, duals, this.needed)) {
        book.addSheet(division);
      }
    }
    return book.bands.length + book.sheets.length > before;
  }

  #addPriced(duals: BandDuals): void {
    const { scale, pricerFor, proper } = this.#ground;
    const { book, classes, objective, closed } = this.#request;
    const { left } = this;
    const values = duals.pieces.map((dual, piece) =>
      left[piece] > 0 ? Math.max(0, Math.floor(dual * scale)) : 0,
    );
    const coin = coinWorth(objective, { scale, pieces: new Float64Array(0), caps: duals.caps });
    const priced = pricerFor(left).price(values, coin);
    const gains = (worth: number, price: number) =>
      worth > (Math.max(0, price) + LEAST_GAIN) * scale;
    for (const offer of priced.bands?.() ?? []) {
      if (closed === true && !book.has(offer)) continue;
      const slot = book.slot(offer.box, offer.cuts, offer.extent);
      if (gains(offer.worth, duals.slots[slot] ?? 0)) book.addBand(offer.make());
    }
    if (closed === true) return;
    classes.forEach((_, g) => {
      for (const { pattern, worth } of priced.patterns(g)) {
        if (gains(worth, duals.classes[g])) book.addPattern(proper(pattern, left));
      }
    });
  }
}
