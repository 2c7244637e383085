import type { BandBook } from '../master/band-book.js';
import type { Room } from '../master/room-master.js';

const FIRST_CAPACITY = 128;

/**
 * Cuts that bound the room of the linear plan over the bands by what sheets there are:
 * each gives a most for no sheet at all, and what a sheet of each pattern adds to it.
 */
export class RoomCuts {
  readonly #book: BandBook;
  #capacity = FIRST_CAPACITY;
  #none = new Float64Array(FIRST_CAPACITY);
  #added: Float64Array;
  count = 0;

  /** @param book whose sheets and slots do not change any more */
  constructor(book: BandBook) {
    this.#book = book;
    this.#added = new Float64Array(book.sheets.length * FIRST_CAPACITY);
  }

  /** By cut, the most room without any sheet. */
  get none(): Float64Array {
    return this.#none;
  }

  /** What a sheet of a pattern adds to each cut: the `count` numbers from `at(sheet)` on. */
  get added(): Float64Array {
    return this.#added;
  }

  at(sheet: number): number {
    return sheet * this.#capacity;
  }

  /** The cut that is exact at some slots. */
  add({ room, worth }: Room, slots: ArrayLike<number>): void {
    if (this.count === this.#capacity) this.#grow();
    const cut = this.count++;
    let none = room;
    for (let slot = 0; slot < slots.length; slot++) none -= (worth[slot] ?? 0) * slots[slot];
    this.#none[cut] = none;
    this.#book.sheets.forEach(({ slots: own }, sheet) => {
      let sum = 0;
      for (const [slot, copies] of own) sum += (worth[slot] ?? 0) * copies;
      this.#added[this.at(sheet) + cut] = sum;
    });
  }

  /** Forgets all but the last so many. */
  keepLast(most: number): void {
    const gone = this.count - most;
    if (gone <= 0) return;
    this.#none.copyWithin(0, gone, this.count);
    for (let sheet = 0; sheet < this.#book.sheets.length; sheet++) {
      const from = this.at(sheet);
      this.#added.copyWithin(from, from + gone, from + this.count);
    }
    this.count = most;
  }

  /** The most room that a cut leaves so many of each sheet pattern. */
  mostBy(cut: number, sheets: ArrayLike<number>): number {
    let sum = this.#none[cut];
    for (let sheet = 0; sheet < sheets.length; sheet++) {
      if (sheets[sheet] > 0) sum += sheets[sheet] * this.#added[this.at(sheet) + cut];
    }
    return sum;
  }

  #grow(): void {
    const before = this.#capacity;
    const [none, added] = [this.#none, this.#added];
    this.#capacity = 2 * before;
    this.#none = new Float64Array(this.#capacity);
    this.#none.set(none);
    this.#added = new Float64Array(this.#book.sheets.length * this.#capacity);
    for (let sheet = 0; sheet < this.#book.sheets.length; sheet++) {
      this.#added.set(added.subarray(sheet * before, (sheet + 1) * before), this.at(sheet));
    }
  }
}
