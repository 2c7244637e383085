import type { BandBook } from '../master/band-book.js';
import type { BandAnswer, BandDuals } from '../master/band-master.js';
import { kindsWanted } from '../master/kinds-wanted.js';
import type { Cap } from '../master/objective.js';
import { compose } from './compose.js';
import { fillByDecimation } from './fill-by-decimation.js';
import { fillSlots } from './fill-slots.js';
import type { SearchGround } from './ground.js';
import { type Listing, withLikelyBands } from './likely-bands.js';
import type { Planned } from './planned.js';
import { missingWeight, type Partial } from './refill.js';
import { type Cut, settleLastBands } from './settle-last-bands.js';
import { settleMostBands } from './settle-most-bands.js';
import type { SettledSheets } from './settle-sheets.js';
import { SettledMaster } from './settled-master.js';
import { slotsOf } from './slots-of.js';
import { swapBands } from './swap-bands.js';

export interface BandSettlingRequest {
  /** Likely patterns, many of them. */
  readonly pool: BandBook;
  readonly caps: readonly Cap[];
  /** What going without a piece counts. */
  readonly weights: readonly number[];
  /** The same, 1 on average. */
  readonly losses: readonly number[];
}

/** Bands that take the places of others, and those that are decimated. */
const LISTED_TO_SWAP: Listing = { most: 400, short: 0.06 };
const LISTED_TO_DECIMATE: Listing = { most: 150, short: 0.04 };
/** Spare pieces that there must be room for lest whole bands be hard to find. */
const ENOUGH_ROOM = 1;
const ROUNDS_FIRST = 10;

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
  readonly #duals: BandDuals;
  #listed: BandBook | undefined;
  #decimated: BandBook | undefined;

  private constructor(
    ground: SearchGround,
    request: BandSettlingRequest,
    settled: SettledSheets,
    book: BandBook,
    master: SettledMaster,
    start: BandAnswer,
    duals: BandDuals,
  ) {
    this.#ground = ground;
    this.#request = request;
    this.#settled = settled;
    this.#book = book;
    this.#master = master;
    this.#start = start;
    this.#duals = duals;
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
      return new BandSettling(ground, request, settled, book, master, start, start.duals);
    }
    master.close();
    return undefined;
  }

  /** Room for spare pieces in the linear plan of the bands; see the sheets'. */
  get room(): number {
    return -this.#start.cost;
  }

  /** With room for so little, neither decimation to the end nor linear plans settle all bands but seldom. */
  get tight(): boolean {
    return this.room * kindsWanted(this.#ground.demand) < ENOUGH_ROOM;
  }

  close(): void {
    this.#master.close();
  }

  get #over(): boolean {
    return this.#ground.deadline.left() <= 0;
  }

  /**
   * Settles most bands about as the linear plan has them, other ones each time, and
   * the rest by the integer master.
   */
  async settle(random: () => number): Promise<Partial | undefined> {
    const master = this.#master;
    try {
      const { duals } = await settleMostBands(master, this.#start, random, () => this.#over);
      const cut = duals && !this.#over ? await this.#settleLast(duals) : undefined;
      const planned = cut && this.#planned(cut);
      return planned && planned.missing > 0 ? this.#planned(this.#swapped(cut)) : planned;
    } finally {
      [...master.bands].forEach((count, band) => {
        if (count > 0) master.settleBand(band, -count);
      });
    }
  }

  /**
   * Settles most bands by decimation, other ones each time, and the rest by the integer
   * master.
   * @returns undefined where more would lack than few other bands make up for
   */
  async decimate(random: () => number): Promise<Partial | undefined> {
    const { demand } = this.#ground;
    const listing = LISTED_TO_DECIMATE;
    this.#decimated ??= withLikelyBands(this.#ground, this.#book, demand, this.#duals, listing);
    const book = this.#decimated;
    const sheets = this.#sheets();
    const open = { book, bands: [...book.bands.keys()], slots: [...slotsOf(book, sheets)], demand };
    const bands = await fillByDecimation(this.#ground, {
      open,
      worth: this.#duals.pieces,
      weights: this.#request.weights,
      littleRoom: this.tight,
      random,
    });
    if (bands === undefined) return undefined;
    const cut = { book, sheets, bands };
    const planned = this.#planned(cut);
    return planned.missing > 0 ? this.#planned(this.#swapped(cut)) : planned;
  }

  /**
   * Whole bands that give every piece, where there is little room: see `fillSlots`.
   * @returns 'none' where there are hardly any, undefined where none were found
   */
  async fill(): Promise<Partial | 'none' | undefined> {
    const { room } = this;
    if (room <= 0) return undefined;
    const sheets = this.#sheets();
    const slots = [...slotsOf(this.#book, sheets)];
    const request = { book: this.#book, slots, duals: this.#duals, room };
    const filled = await fillSlots(this.#ground, request);
    if (filled === 'none' || filled === undefined) return filled;
    return this.#planned({ book: filled.book, sheets, bands: filled.bands });
  }

  /** How many sheets of each pattern of the book, and of all books that begin as it does. */
  #sheets(): readonly number[] {
    return this.#book.sheets.map((_, sheet) => this.#master.sheets[sheet] ?? 0);
  }

  async #settleLast(duals: BandDuals): Promise<Cut | undefined> {
    const { caps, weights } = this.#request;
    const { classes } = this.#settled;
    const request = { classes, caps, weights, book: this.#book, sheets: this.#sheets(), duals };
    return settleLastBands(this.#ground, request, this.#master);
  }

  /** The same with bands swapped, so that less lacks. */
  #swapped(cut: Cut): Cut {
    const { demand } = this.#ground;
    const { pieces: values } = this.#duals;
    const book = this.#ground.newBook();
    const used = [...cut.bands.keys()].filter((band) => cut.bands[band] > 0);
    book.adopt(cut.book, used, [...cut.sheets.keys()]);
    this.#listed ??= withLikelyBands(this.#ground, this.#book, demand, this.#duals, LISTED_TO_SWAP);
    book.adopt(this.#listed, [...this.#listed.bands.keys()], []);
    // The book's bands are in the order in which they were taken in.
    const counts = used.map((band) => cut.bands[band]);
    const bands = swapBands({ book, counts, demand, values, room: this.room });
    return bands === undefined ? cut : { book, sheets: cut.sheets, bands };
  }

  #planned({ book, sheets, bands }: Cut): Partial {
    const planned = compose(book, { sheets, bands }).map(
      ([pattern, count]): Planned => ({ pattern, count }),
    );
    const missing = missingWeight(this.#ground.demand, planned, this.#request.weights);
    return { planned, missing };
  }
}
