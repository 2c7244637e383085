import type { BandBook } from '../master/band-book.js';
import { type BandAnswer, type BandDuals, BandMaster } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';
import { leastOfEach } from './least-of-each.js';
import { jointCosts } from './reduced-costs.js';
import { settleOne } from './settle-one.js';
import { settleSupplies } from './settle-supplies.js';
import { ANY_NUMBER, SettledMaster } from './settled-master.js';
import { likelyDivisions } from './sheet-divisions.js';

export interface SheetSettlingRequest {
  /** Likely patterns, many of them. */
  readonly pool: BandBook;
  readonly caps: readonly Cap[];
  /** For each piece, what going without one counts, 1 on average. */
  readonly losses: readonly number[];
}

/** Sheets that are settled, whose bands may still be broken. */
export interface SettledSheets {
  readonly classes: readonly StockClass[];
  /** The patterns that were chosen from, and how many of each sheet pattern. */
  readonly book: BandBook;
  readonly sheets: readonly number[];
  /**
   * Of the linear plan over the bands: below 0 where spare pieces could be cut, which
   * whole bands need; above where pieces must be gone without.
   */
  readonly cost: number;
}

/** How many patterns are chosen from. */
export interface Breadth {
  readonly sheets: number;
  readonly bands: number;
}

/** How far from the linear plan numbers of the dearest sheets are tried. */
const APART = 3;
/** Divisions of a face that are listed, and by what share of a sheet they may fall short. */
const LISTED_DIVISIONS = 200;
const LISTED_SHORT = 0.1;
/** Of the patterns chosen, this share at most is of one stock, or of one slot. */
const MOST_OF_STOCK = 0.4;
const MOST_OF_SLOT = 0.04;
/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.4;
/** How many are tried before one is settled, and what may be lost by the first that will do. */
const TRIED = 5;
const LITTLE = 0.003;
/** How far noise may change the weight of what is broken, as a share. */
const NOISE = 0.5;
const ROUNDS_FIRST = 10;
const ROUNDS_EACH = 2;
const EPSILON = 1e-6;

/**
 * Settles whole sheets while their bands may be broken: the linear plan of the bands
 * tells what sheets are good for. What is sought leaves room for as many spare pieces
 * as possible, which whole bands need.
 */
export class SheetSettling {
  readonly #ground: SearchGround;
  readonly #request: SheetSettlingRequest;
  readonly #classes: readonly StockClass[];
  readonly #answer: BandAnswer;
  readonly #duals: BandDuals;
  /** Those that leave most room so far; their patterns are chosen from again. */
  #best: SettledSheets | undefined;

  private constructor(
    ground: SearchGround,
    request: SheetSettlingRequest,
    classes: readonly StockClass[],
    answer: BandAnswer,
    duals: BandDuals,
  ) {
    this.#ground = ground;
    this.#request = request;
    this.#classes = classes;
    this.#answer = answer;
    this.#duals = duals;
  }

  /** Settles the supplies; undefined where that fails, or takes too long. */
  static async open(
    ground: SearchGround,
    request: SheetSettlingRequest,
  ): Promise<SheetSettling | undefined> {
    const { pool } = request;
    const { classes } = ground;
    const master = new SettledMaster(ground, { ...asked(ground, request), classes, book: pool });
    try {
      const start = await master.solve(ROUNDS_FIRST);
      const answer = await settleSupplies(ground, master, start, APART, 1);
      const duals = answer?.duals;
      if (answer === undefined || duals === undefined) return undefined;
      const any = pool.slots.map(() => ANY_NUMBER);
      const gap = LISTED_SHORT * Math.max(0, ...duals.classes);
      const divisions = likelyDivisions(ground, pool, duals, any, gap, LISTED_DIVISIONS);
      for (const division of divisions) pool.addSheet(division);
      return new SheetSettling(ground, request, master.classes, answer, duals);
    } finally {
      master.close();
    }
  }

  /**
   * By the integer master: in seconds, and well.
   * @param nodes that it may take
   * @param fromLinear true keeps the whole parts of the linear plan, which leaves less to
   *   choose from, looked through the better
   */
  async byIntegerMaster(
    breadth: Breadth,
    nodes: number,
    fromLinear: boolean,
  ): Promise<SettledSheets | undefined> {
    const ground = this.#ground;
    const { book, amounts } = this.#chosen(breadth);
    const { losses, ...request } = asked(ground, this.#request);
    const { engines, deadline } = ground;
    const classes = this.#classes;
    const master = new BandMaster({ ...request, penalties: losses, classes, book, engines });
    try {
      master.addFromBook();
      if (fromLinear) {
        amounts.forEach((amount, sheet) => {
          master.setLeastOfSheet(sheet, Math.floor(amount + EPSILON));
        });
      }
      ground.effort.integerMasters++;
      const seconds = deadline.left() * SHARE_OF_TIME;
      const answer = await master.solve({ integer: 'sheets', seconds, nodes });
      if (typeof answer === 'string') return undefined;
      const sheets = answer.sheets.map(Math.round);
      return this.#remembered({ classes, book, sheets, cost: answer.cost });
    } finally {
      master.close();
    }
  }

  /** One after another, as the linear plan has them: at once, and badly. */
  async byDiving(breadth: Breadth, random: () => number): Promise<SettledSheets | undefined> {
    const ground = this.#ground;
    const { book } = this.#chosen(breadth);
    const classes = this.#classes;
    const { pool } = this.#request;
    const master = new SettledMaster(ground, {
      ...asked(ground, this.#request),
      classes,
      book,
      pool,
    });
    try {
      let answer = await master.solve(ROUNDS_FIRST);
      while (answer !== undefined) {
        const open = openSheets(master, answer, random);
        if (open.length === 0) {
          const sheets = book.sheets.map((_, sheet) => master.sheets[sheet] ?? 0);
          return this.#remembered({ classes, book, sheets, cost: answer.cost });
        }
        answer = await settleOne(master, answer, open, {
          settle: (sheet, count) => master.settleSheet(sheet, count),
          tried: TRIED,
          little: LITTLE,
          rounds: ROUNDS_EACH,
        });
      }
      return undefined;
    } finally {
      master.close();
    }
  }

  #remembered(settled: SettledSheets): SettledSheets {
    if (settled.cost < (this.#best?.cost ?? Number.POSITIVE_INFINITY)) this.#best = settled;
    return settled;
  }

  /**
   * Few patterns out of many, so that linear plans are solved in little time.
   * `amounts`: of each sheet pattern in the linear plan.
   */
  #chosen(breadth: Breadth): { readonly book: BandBook; readonly amounts: readonly number[] } {
    const { pool } = this.#request;
    const costs = jointCosts(pool, this.#duals);
    const bands = leastOfEach(
      costs.bands,
      this.#answer.bands,
      breadth.bands,
      MOST_OF_SLOT,
      (band) => pool.bands[band].slot,
    );
    const sheets = leastOfEach(
      costs.sheets,
      this.#answer.sheets,
      breadth.sheets,
      MOST_OF_STOCK,
      (sheet) => pool.sheets[sheet].box,
    );
    const book = this.#ground.newBook();
    book.adopt(pool, bands, sheets);
    const best = this.#best;
    if (best !== undefined) {
      const used = [...best.sheets.keys()].filter((sheet) => best.sheets[sheet] > 0);
      book.adopt(best.book, [], used);
    }
    // The book's sheets are in the order in which they were taken in.
    return { book, amounts: sheets.map((sheet) => this.#answer.sheets[sheet] ?? 0) };
  }
}

function asked({ demand }: SearchGround, { caps, losses }: SheetSettlingRequest) {
  return { demand, objective: { cost: undefined, caps }, losses, spare: demand.map(() => 1) };
}

/** Settles the whole parts of sheet patterns; those that are broken, most first. */
function openSheets(
  master: SettledMaster,
  { sheets }: BandAnswer,
  random: () => number,
): readonly number[] {
  const open: { sheet: number; part: number }[] = [];
  sheets.forEach((amount, sheet) => {
    const left = amount - (master.sheets[sheet] ?? 0);
    if (left <= EPSILON) return;
    const whole = Math.floor(left + EPSILON);
    if (whole > 0) master.settleSheet(sheet, whole);
    const part = left - whole;
    if (part > EPSILON) open.push({ sheet, part: part * (1 + NOISE * (random() - 0.5)) });
  });
  return open.sort((a, b) => b.part - a.part || a.sheet - b.sheet).map(({ sheet }) => sheet);
}
