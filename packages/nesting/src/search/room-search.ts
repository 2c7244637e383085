import type { BandBook } from '../master/band-book.js';
import { RoomMaster } from '../master/room-master.js';
import { annealSheets } from './anneal-sheets.js';
import type { SearchGround } from './ground.js';
import { RoomCuts } from './room-cuts.js';
import { slotsOf } from './slots-of.js';

/** How many sheets there are of each pattern, and the room that they leave. */
export interface SheetsWithRoom {
  readonly numbers: Int32Array;
  readonly room: number;
}

/** Linear plans of bands that one search may solve. */
const LINEAR_PLANS = 300;
/** The share of the broken sheets' room that is good enough. */
const ENOUGH = 0.8;
/** What share of the way to the broken sheets' room is aimed for, how it shrinks and grows, and the least. */
const AIM = { first: 0.3, after: 0.15, least: 0.05, less: 0.7, more: 1.5 };
/** Sheets that are cut otherwise at a time. */
const CHANGES = { first: 2, most: 10, step: 2 };
/** How far from whole sheets to broken ones a cut is sought first. */
const INWARD = 0.5;
/** Cuts that are kept from one search to the next. */
const CUTS_KEPT = 500;
const EPSILON = 1e-6;

/**
 * Searches for whole sheets that leave room for spare pieces, while bands may be broken.
 * Sheets are changed by local search against cuts, and each fresh choice of sheets gives
 * another cut (Benders' decomposition), sought between that choice and the broken sheets of
 * the linear plan first, where cuts go deeper (Ben-Ameur and Neto 2007, "Acceleration of
 * cutting-plane and column generation algorithms").
 */
export class RoomSearch {
  readonly #ground: SearchGround;
  readonly #book: BandBook;
  /** By slot, how many the broken sheets of the linear plan have. */
  readonly #broken: Float64Array;
  /** For each sheet pattern, those of the same stock. */
  readonly #alternatives: readonly (readonly number[])[];
  readonly #cuts: RoomCuts;

  /**
   * @param book does not change any more
   * @param amounts of each sheet pattern in the linear plan
   */
  constructor(ground: SearchGround, book: BandBook, amounts: readonly number[]) {
    this.#ground = ground;
    this.#book = book;
    this.#broken = slotsOf(book, amounts);
    this.#cuts = new RoomCuts(book);
    const ofBox = ground.classes.map((_, box) =>
      [...book.sheets.keys()].filter((sheet) => book.sheets[sheet].box === box),
    );
    this.#alternatives = book.sheets.map(({ box }) => ofBox[box]);
  }

  /**
   * @param start for each sheet, its pattern
   * @returns all sheets met with whose room is known; none where there is no time
   */
  async from(start: Int32Array, random: () => number): Promise<readonly SheetsWithRoom[]> {
    const { demand, engines, deadline, effort } = this.#ground;
    const book = this.#book;
    const master = new RoomMaster({ demand, book, engines });
    const known: SheetsWithRoom[] = [];
    let plans = 0;
    const roomOf = async (slots: Float64Array) => {
      plans++;
      effort.rounds++;
      const room = await master.solve(slots, deadline.left());
      if (room !== undefined) this.#cuts.add(room, slots);
      return room?.room;
    };
    const learn = async (numbers: Int32Array) => {
      const room = await roomOf(slotsOf(book, numbers));
      if (room !== undefined) known.push({ numbers, room });
      return room;
    };
    try {
      this.#cuts.keepLast(CUTS_KEPT);
      const most = await roomOf(this.#broken);
      const first = await learn(this.#numbersOf(start));
      if (most === undefined || first === undefined) return known;
      const enough = most - (1 - ENOUGH) * Math.abs(most);
      let best = { sheets: start, room: first };
      let aim = AIM.first;
      let changes = CHANGES.first;
      while (best.room < enough && plans < LINEAR_PLANS && deadline.left() > 0) {
        const goal = best.room + aim * (most - best.room);
        const next = annealSheets({
          cuts: this.#cuts,
          start: best.sheets,
          alternatives: this.#alternatives,
          goal,
          changes,
          random,
        });
        if (next.room <= best.room + EPSILON) {
          aim *= AIM.less;
          if (aim >= AIM.least) continue;
          if (changes >= CHANGES.most) break;
          changes += CHANGES.step;
          aim = AIM.after;
          continue;
        }
        const numbers = this.#numbersOf(next.sheets);
        await roomOf(this.#inward(numbers));
        const allowed = this.#cuts.mostBy(this.#cuts.count - 1, numbers);
        if (allowed < next.room - EPSILON) continue;
        const room = await learn(numbers);
        if (room === undefined || room <= best.room + EPSILON) continue;
        best = { sheets: next.sheets, room };
        aim = Math.min(AIM.first, aim * AIM.more);
      }
      return known;
    } finally {
      master.close();
    }
  }

  /** Slots between those of whole sheets and of the broken ones. */
  #inward(numbers: Int32Array): Float64Array {
    const slots = slotsOf(this.#book, numbers);
    return slots.map((count, slot) => count + INWARD * (this.#broken[slot] - count));
  }

  #numbersOf(sheets: Int32Array): Int32Array {
    const numbers = new Int32Array(this.#book.sheets.length);
    for (const sheet of sheets) numbers[sheet]++;
    return numbers;
  }
}
