import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import { EntropySearch } from './entropy-search.js';
import type { SearchGround } from './ground.js';
import { leastOfEach } from './least-of-each.js';
import { listPatterns } from './list-patterns.js';
import { jointCosts } from './reduced-costs.js';
import { RoomSearch, type SheetsWithRoom } from './room-search.js';
import { settleSupplies } from './settle-supplies.js';
import { SettledMaster } from './settled-master.js';
import { likelyDivisions } from './sheet-divisions.js';
import { widenPool } from './widen-pool.js';

export interface SheetSettlingRequest {
  /** Likely patterns, many of them. */
  readonly pool: BandBook;
  readonly caps: readonly Cap[];
  /** For each piece, what going without one counts, 1 on average. */
  readonly losses: readonly number[];
  /** Whether there are so few sheets that whole numbers of them are far from the linear plan. */
  readonly fewSheets: boolean;
}

/** Sheets that are settled, whose bands may still be broken. */
export interface SettledSheets {
  readonly classes: readonly StockClass[];
  /** The patterns that were chosen from, and how many of each sheet pattern. */
  readonly book: BandBook;
  readonly sheets: readonly number[];
  /**
   * So many spare copies of each piece can be cut besides the demand, in a linear plan of the
   * bands; below 0, so many lack.
   */
  readonly room: number;
}

/** How far from the linear plan numbers of the dearest sheets are tried. */
const APART = 3;
/** Divisions of a face that are listed, and by what share of a sheet they may fall short. */
const LISTED_DIVISIONS = 200;
const LISTED_SHORT = 0.1;
/** Patterns that are chosen from; of them, this share at most is of one stock, or of one slot. */
const SHEETS = 400;
const BANDS = 800;
const MOST_OF_STOCK = 0.4;
const MOST_OF_SLOT = 0.04;
const ROUNDS_FIRST = 10;
/** Patterns that are listed for the search for likely sheets. */
const LISTED_LIKELY = 40_000;
/** Those that are listed for whole numbers of few sheets, first and where these leave no room. */
const LISTED_FOR_FEW = [10_000, 40_000];
/** How many sheets are cut otherwise in sheets that are unlike: such a share, but so many at most. */
const UNLIKE = { share: 0.03, most: 2 };
/** More slots than any division has. */
const ANY_NUMBER = 1_000_000;
const EPSILON = 1e-6;

/**
 * Settles whole sheets while their bands may be broken, so that the linear plan of the bands
 * leaves as much room for spare pieces as possible, which whole bands need.
 */
export class SheetSettling {
  readonly #ground: SearchGround;
  readonly #classes: readonly StockClass[];
  #book: BandBook;
  /** In the linear plan, how many of each sheet pattern. */
  #amounts: readonly number[];
  /** How many sheets of each stock. */
  readonly #counts: readonly number[];
  #search: RoomSearch;
  /** Widen the pool, each by more than the one before; those that were not asked for yet. */
  readonly #widenings: (() => ReturnType<typeof widenPool>)[];
  /** Opens the search for likely sheets; undefined once that is done. */
  #openLikely: (() => EntropySearch | undefined) | undefined;
  #likely: EntropySearch | undefined;
  /** Room that the broken sheets of the linear plan leave. */
  readonly linearRoom: number;
  /** Sheets whose room is known and that were not given yet, and those that were. */
  #known: readonly SheetsWithRoom[] = [];
  #given: SheetsWithRoom[] = [];

  private constructor(
    ground: SearchGround,
    classes: readonly StockClass[],
    request: SheetSettlingRequest,
    answer: BandAnswer,
  ) {
    const { book, amounts } = chosenFrom(ground, request.pool, answer);
    this.#ground = ground;
    this.#classes = classes;
    this.#book = book;
    this.#amounts = amounts;
    this.#counts = answer.supplies.map((of) =>
      of.reduce((sum, amount) => sum + Math.ceil(amount - EPSILON), 0),
    );
    this.#search = new RoomSearch(ground, book, amounts);
    const widths = request.fewSheets ? LISTED_FOR_FEW : [];
    this.#widenings = widths.map(
      (most) => () => widenPool(ground, { ...request, classes, answer, most }),
    );
    this.#openLikely = () => {
      const asked = { ...request, classes, answer, most: LISTED_LIKELY };
      const listed = listPatterns(ground, asked);
      const worth = answer.duals?.pieces ?? [];
      return listed && EntropySearch.open(ground, listed, this.#counts, worth);
    };
    this.linearRoom = -answer.cost;
  }

  /** Settles the supplies; undefined where that fails, or takes too long. */
  static async open(
    ground: SearchGround,
    request: SheetSettlingRequest,
  ): Promise<SheetSettling | undefined> {
    const { pool, caps, losses } = request;
    const { classes, demand } = ground;
    const master = new SettledMaster(ground, {
      demand,
      classes,
      objective: { cost: undefined, caps },
      losses,
      spare: demand.map(() => 1),
      book: pool,
    });
    try {
      const start = await master.solve(ROUNDS_FIRST);
      const answer = await settleSupplies(ground, master, start, APART, 1);
      const duals = answer?.duals;
      if (answer === undefined || duals === undefined) return undefined;
      const any = pool.slots.map(() => ANY_NUMBER);
      const gap = LISTED_SHORT * Math.max(0, ...duals.classes);
      const divisions = likelyDivisions(ground, pool, duals, any, gap, LISTED_DIVISIONS);
      for (const division of divisions) pool.addSheet(division);
      return new SheetSettling(ground, master.classes, request, answer);
    } finally {
      master.close();
    }
  }

  /**
   * Sheets that many whole bands are likely to fill, other ones each time.
   * @returns undefined where there is no time, or none were found
   */
  async settleLikely(random: () => number): Promise<SettledSheets | undefined> {
    if (this.linearRoom <= 0) return undefined;
    this.#likely ??= this.#openLikely?.();
    this.#openLikely = undefined;
    const found = await this.#likely?.next(random);
    return this.#likely && found && this.#settled(this.#likely.book, found);
  }

  /**
   * Sheets that leave as much room as was found, unlike those of the times before. Few sheets are
   * sought among patterns listed for their numbers, and where they leave no room though broken
   * ones do, once more among more patterns.
   * @returns undefined where there is no time, or nothing unlike was found
   */
  async settle(random: () => number): Promise<SettledSheets | undefined> {
    const untouched = this.#widenings.length === LISTED_FOR_FEW.length;
    if (untouched) this.#widenPool();
    const start = this.#rounded(this.#given.length === 0 ? () => 0.5 : random);
    const found = await this.#search.from(start, random);
    this.#known = [...this.#known, ...found]
      .filter(({ numbers }) => this.#given.every((given) => unlike(given.numbers, numbers)))
      .sort((a, b) => b.room - a.room);
    const [best] = this.#known;
    if ((best?.room ?? -1) < 0 && this.linearRoom > 0 && this.#widenPool())
      return this.settle(random);
    if (best === undefined) return undefined;
    this.#given.push(best);
    return this.#settled(this.#book, best);
  }

  /** @returns whether there are more patterns to choose from now */
  #widenPool(): boolean {
    const wide = this.#widenings.shift()?.();
    if (wide === undefined) {
      // Where so many cannot be listed, more cannot either.
      this.#widenings.length = 0;
      return false;
    }
    const { book, amounts } = chosenFrom(this.#ground, wide.pool, wide.answer);
    this.#book = book;
    this.#amounts = amounts;
    this.#search = new RoomSearch(this.#ground, book, amounts);
    this.#known = [];
    this.#given = [];
    return true;
  }

  #settled(book: BandBook, { numbers, room }: SheetsWithRoom): SettledSheets {
    return { classes: this.#classes, book, sheets: [...numbers], room };
  }

  /** For each sheet, its pattern: those of the linear plan, broken ones rounded up or down. */
  #rounded(random: () => number): Int32Array {
    const sheets: number[] = [];
    this.#counts.forEach((count, box) => {
      const own = [...this.#book.sheets.keys()].filter(
        (sheet) => this.#book.sheets[sheet].box === box,
      );
      const first = sheets.length;
      const parts = own.map((sheet) => {
        const amount = this.#amounts[sheet] ?? 0;
        const whole = Math.floor(amount + EPSILON);
        for (let i = 0; i < whole; i++) sheets.push(sheet);
        return { sheet, part: (amount - whole) * (0.5 + random()) };
      });
      parts.sort((a, b) => b.part - a.part || a.sheet - b.sheet);
      const left = count - (sheets.length - first);
      for (const { sheet } of parts.slice(0, left)) sheets.push(sheet);
    });
    return Int32Array.from(sheets);
  }
}

function unlike(one: Int32Array, other: Int32Array): boolean {
  const sheets = one.reduce((sum, count) => sum + count, 0);
  const apart = one.reduce((sum, count, sheet) => sum + Math.max(0, count - other[sheet]), 0);
  return apart >= Math.max(1, Math.min(UNLIKE.most, UNLIKE.share * sheets));
}

/**
 * Few patterns out of many, so that linear plans are solved in little time.
 * `amounts`: of each sheet pattern in the linear plan.
 */
function chosenFrom(
  ground: SearchGround,
  pool: BandBook,
  answer: BandAnswer,
): { readonly book: BandBook; readonly amounts: readonly number[] } {
  const book = ground.newBook();
  if (answer.duals === undefined) return { book, amounts: [] };
  const costs = jointCosts(pool, answer.duals);
  const bands = leastOfEach(
    costs.bands,
    answer.bands,
    BANDS,
    MOST_OF_SLOT,
    (band) => pool.bands[band].slot,
  );
  const sheets = leastOfEach(
    costs.sheets,
    answer.sheets,
    SHEETS,
    MOST_OF_STOCK,
    (sheet) => pool.sheets[sheet].box,
  );
  book.adopt(pool, bands, sheets);
  // The book's sheets are in the order in which they were taken in.
  return { book, amounts: sheets.map((sheet) => answer.sheets[sheet] ?? 0) };
}
