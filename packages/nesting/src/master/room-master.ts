import type { Engines } from '../solvers/engine-choice.js';
import type { BandBook } from './band-book.js';
import { BandMaster } from './band-master.js';

export interface RoomMasterRequest {
  readonly demand: readonly number[];
  /** All its bands may be cut, of the slots that there are. */
  readonly book: BandBook;
  readonly engines: Engines;
}

export interface Room {
  /** So many spare copies of each piece can be cut besides the demand; below 0, so many lack. */
  readonly room: number;
  /** By slot of the book, how much room one more of it makes. */
  readonly worth: readonly number[];
}

/** Spare copies of each piece beyond which more do not count. */
const MOST_ROOM = 6;

/**
 * The linear plan of the bands in so many slots, whatever sheets they are cut off: how
 * much more of each piece it cuts than is wanted. As a function of the slots this room is
 * concave, so that its duals at any slots bound it everywhere (Benders 1962, "Partitioning
 * procedures for solving mixed-variables programming problems").
 */
export class RoomMaster {
  readonly #master: BandMaster;
  /** Room is counted from none of any piece, since columns are at least 0. */
  readonly #fromNone: number;

  constructor({ demand, book, engines }: RoomMasterRequest) {
    this.#fromNone = Math.max(0, ...demand);
    this.#master = new BandMaster({
      demand: demand.map((quantity) => quantity - this.#fromNone),
      classes: [],
      objective: { cost: undefined, caps: [] },
      spare: demand.map(() => 1),
      mostSpare: this.#fromNone + MOST_ROOM,
      book,
      engines,
    });
    this.#master.addFromBook([], undefined);
  }

  /**
   * @param slots by slot of the book, how many there are, broken ones too
   * @returns undefined where there is no time
   */
  async solve(slots: ArrayLike<number>, seconds: number): Promise<Room | undefined> {
    for (let slot = 0; slot < slots.length; slot++) this.#master.setNeeded(slot, -slots[slot]);
    const answer = await this.#master.solve({ integer: false, seconds });
    if (typeof answer === 'string' || answer.duals === undefined) return undefined;
    return { room: -answer.cost - this.#fromNone, worth: answer.duals.slots };
  }

  close(): void {
    this.#master.close();
  }
}
