import type { BandBook } from '../master/band-book.js';

/** A band put in the place of another of its slot: indices in a book. */
export interface BandSwap {
  readonly from: number;
  readonly to: number;
}

/** Steps that a search may still take. */
export interface Steps {
  left: number;
}

/** Copies more or less of each piece. */
export type Change = Int32Array;

const EPSILON = 1e-9;

/**
 * All swaps of a band that is cut for another of its slot, by what they change. Changes
 * have linear hashes: that of two swaps together is the sum of theirs, so that the partner
 * a swap needs is looked up at once. Swaps that gain most in worth come first: a change is
 * worth the sum of what its swaps gain, which leaves few of them to begin with.
 */
export class SwapIndex {
  readonly #book: BandBook;
  readonly #counts: readonly number[];
  readonly #values: readonly number[];
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #hashes: Int32Array;
  /** What the pieces are worth more after each swap. */
  readonly #gains: Float64Array;
  /** Swaps of one hash make a chain: the last of each in an open table, then the one before it. */
  readonly #lastOf: Int32Array;
  readonly #before: Int32Array;
  readonly #bits: number;

  /**
   * @param counts how many of each band are cut
   * @param values what each piece is worth
   */
  constructor(book: BandBook, counts: readonly number[], values: readonly number[]) {
    this.#book = book;
    this.#counts = counts;
    this.#values = values;
    const ofSlot: number[][] = book.slots.map(() => []);
    book.bands.forEach(({ slot }, band) => {
      ofSlot[slot].push(band);
    });
    const worth = book.bands.map(({ counts }) =>
      counts.reduce((sum, [piece, copies]) => sum + copies * values[piece], 0),
    );
    const swaps: { readonly from: number; readonly to: number; readonly gain: number }[] = [];
    book.bands.forEach(({ slot }, from) => {
      if (!(counts[from] > 0)) return;
      for (const to of ofSlot[slot]) {
        if (to !== from) swaps.push({ from, to, gain: worth[to] - worth[from] });
      }
    });
    swaps.sort((a, b) => b.gain - a.gain);
    const hashes = book.bands.map(({ counts }) =>
      counts.reduce((sum, [piece, copies]) => (sum + Math.imul(weightOf(piece), copies)) | 0, 0),
    );
    this.#from = Int32Array.from(swaps, ({ from }) => from);
    this.#to = Int32Array.from(swaps, ({ to }) => to);
    this.#gains = Float64Array.from(swaps, ({ gain }) => gain);
    this.#hashes = this.#from.map((band, swap) => hashes[this.#to[swap]] - hashes[band]);
    this.#bits = Math.max(1, Math.ceil(Math.log2(2 * swaps.length + 1)));
    this.#lastOf = new Int32Array(2 ** this.#bits).fill(-1);
    this.#before = new Int32Array(swaps.length);
    this.#hashes.forEach((hash, swap) => {
      const at = this.#placeOf(hash);
      this.#before[swap] = this.#lastOf[at];
      this.#lastOf[at] = swap;
    });
  }

  get size(): number {
    return this.#from.length;
  }

  /** One swap, or two, that make exactly this change. */
  find(change: Change): readonly BandSwap[] | undefined {
    const hash = hashOf(change);
    for (let one = this.#chain(hash); one >= 0; one = this.#before[one]) {
      if (this.#makes(change, [one])) return this.#swaps([one]);
    }
    for (let one = 0; one < this.size; one++) {
      let other = this.#chain((hash - this.#hashes[one]) | 0);
      // Each two are met with twice.
      for (; other >= one; other = this.#before[other]) {
        if (this.#makes(change, [one, other])) return this.#swaps([one, other]);
      }
    }
    return undefined;
  }

  /**
   * Three swaps that make exactly this change.
   * @param steps of search; it is given up after so many
   */
  findThree(change: Change, steps: Steps): readonly BandSwap[] | undefined {
    const hash = hashOf(change);
    const gains = this.#gains;
    const gain = change.reduce((sum, copies, piece) => sum + copies * this.#values[piece], 0);
    // The three in order of their gains: the first gains a third at least, and the last no more than the second.
    for (let one = 0; one < this.size && 3 * gains[one] >= gain - EPSILON; one++) {
      for (let two = one; two < this.size; two++) {
        if (gain - gains[one] - gains[two] > gains[two] + EPSILON) break;
        if (steps.left-- <= 0) return undefined;
        let last = this.#chain((hash - this.#hashes[one] - this.#hashes[two]) | 0);
        for (; last >= 0; last = this.#before[last]) {
          if (this.#makes(change, [one, two, last])) return this.#swaps([one, two, last]);
        }
      }
    }
    return undefined;
  }

  /** The last swap of a hash; below 0 for none. */
  #chain(hash: number): number {
    return this.#lastOf[this.#placeOf(hash)];
  }

  #placeOf(hash: number): number {
    const mask = this.#lastOf.length - 1;
    let at = Math.imul(hash, 0x9e3779b1) >>> (32 - this.#bits);
    while (this.#lastOf[at] >= 0 && this.#hashes[this.#lastOf[at]] !== hash) at = (at + 1) & mask;
    return at;
  }

  /** Whether there are enough bands for these swaps, and they change just that. */
  #makes(change: Change, swaps: readonly number[]): boolean {
    const left = Int32Array.from(change);
    const taken = new Map<number, number>();
    for (const swap of swaps) {
      const from = this.#from[swap];
      taken.set(from, (taken.get(from) ?? 0) + 1);
      for (const [piece, copies] of this.#book.bands[from].counts) left[piece] += copies;
      for (const [piece, copies] of this.#book.bands[this.#to[swap]].counts) left[piece] -= copies;
    }
    if (left.some((copies) => copies !== 0)) return false;
    return [...taken].every(([band, count]) => count <= this.#counts[band]);
  }

  #swaps(indices: readonly number[]): readonly BandSwap[] {
    return indices.map((index) => ({ from: this.#from[index], to: this.#to[index] }));
  }
}

function hashOf(change: Change): number {
  return change.reduce((sum, copies, i) => (sum + Math.imul(weightOf(i), copies)) | 0, 0);
}

/** A number for each piece, the bits of which are well mixed (MurmurHash3's last step). */
function weightOf(piece: number): number {
  let mixed = Math.imul(piece + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}
