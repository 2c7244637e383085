/**
 * Tells which lays are enough to fill a strip best, where it is never of use to fill more of it: one
 * is left out where of others that are no longer and worth no less there are as many copies as the
 * strip has room for, since one of those can always take its place. Of hundreds of lays a few dozen
 * are left.
 */
export class EnoughLays {
  readonly #alongs: readonly number[];
  readonly #most: readonly number[];
  readonly #room: number;
  readonly #kept: Int32Array;

  /**
   * @param alongs how much of the strip each lay takes up, ascending; at least 1
   * @param most copies of each that are of use
   * @param room length of the strip
   */
  constructor(alongs: readonly number[], most: readonly number[], room: number) {
    this.#alongs = alongs;
    this.#most = most;
    this.#room = room;
    this.#kept = new Int32Array(alongs.length);
  }

  /**
   * @param worths of one copy of each lay; those not above 0 are left out
   * @returns indices, ascending; valid until the next call
   */
  of(worths: ArrayLike<number>): Int32Array {
    const kept = this.#kept;
    let count = 0;
    for (let lay = 0; lay < this.#alongs.length; lay++) {
      if (!(worths[lay] > 0) || this.#isReplaced(worths, worths[lay], count)) continue;
      kept[count++] = lay;
    }
    return kept.subarray(0, count);
  }

  /** Whether the first so many kept lays fill the strip with lays worth as much. */
  #isReplaced(worths: ArrayLike<number>, worth: number, kept: number): boolean {
    let copies = 0;
    let shortest = 0;
    for (let k = 0; k < kept; k++) {
      const lay = this.#kept[k];
      if (worths[lay] < worth) continue;
      if (copies === 0) shortest = this.#alongs[lay];
      copies += this.#most[lay];
      // One copy more than there are would find no room.
      if ((copies + 1) * shortest > this.#room) return true;
    }
    return false;
  }
}
