import { type Limits, mayRest } from '../pattern/limits.js';
import type { ListedFace, ListedStrip } from '../pattern/strip-lister.js';
import type { PieceNumbers } from './piece-numbers.js';
import type { Steps } from './steps.js';

/** What one sheet can be cut into, and the least that it loses by it. */
export interface SheetYield {
  /** Its pieces, as one of `PieceNumbers`. */
  readonly pieces: number;
  /** By how much it falls short of the best, in units of the values. */
  readonly loss: number;
  readonly face: ListedFace;
  readonly strips: readonly ListedStrip[];
}

export interface SheetYieldsRequest {
  /** Of one stock class. */
  readonly faces: readonly ListedFace[];
  readonly demand: readonly number[];
  readonly numbers: PieceNumbers;
  /** One for each piece, whole numbers, and what a coin of kept remnants is worth in their unit. */
  readonly values: ArrayLike<number>;
  readonly coin: number;
  /** What no sheet is worth more than. */
  readonly best: number;
  /** The most that a sheet may lose. */
  readonly gap: number;
  readonly limits: Limits;
  /** Steps that are left; shared by the classes of a problem. */
  readonly steps: Steps;
}

/** Steps that it takes to keep what was seen in mind. */
const TO_REMEMBER = 20;
/** Entries of the table of what can still be had of a room. */
const MOST_ENTRIES = 16_000_000;
const NONE = Number.NEGATIVE_INFINITY;

/** A strip with its number of pieces and its worth. */
interface Item {
  readonly strip: ListedStrip;
  readonly pieces: number;
  readonly worth: number;
}

/** All strips of one extent, those worth most first. */
interface Width {
  readonly extent: number;
  readonly items: readonly Item[];
}

/**
 * Lists what a sheet can yield without losing more than the gap: every lot of pieces once, in
 * the way that leaves most. Strips that the lister tells are put side by side, the widest
 * first; what the rest of the room could be worth at best says which are of no use.
 *
 * A rest that is too narrow for the shear is allowed where a strip that stretches may take it up.
 * @returns ascending by what they lose; undefined where it is too much to look through
 */
export function sheetYields(request: SheetYieldsRequest): readonly SheetYield[] | undefined {
  const best = new Map<number, SheetYield>();
  for (const face of request.faces) {
    const search = new FaceYields(face, request, best);
    if (!search.run()) return undefined;
  }
  return [...best.values()].sort((a, b) => a.loss - b.loss || a.pieces - b.pieces);
}

/** The search of one face. */
class FaceYields {
  readonly #face: ListedFace;
  readonly #request: SheetYieldsRequest;
  readonly #best: Map<number, SheetYield>;
  /** Descending by extent. */
  readonly #widths: readonly Width[];
  /** By room, what the rest of it is worth; NONE where there may be none. */
  readonly #rest: Float64Array;
  /** By the widths from one on, and room: the most that their strips and the rest are worth. */
  readonly #most: Float64Array;
  /** By the width of the last strip: what was seen filled so, and its worth. */
  readonly #seen: (Map<number, number> | undefined)[] = [];
  readonly #taken: Item[] = [];
  /** Copies of each piece that are still wanted. */
  readonly #left: number[];
  readonly #least: number;

  constructor(face: ListedFace, request: SheetYieldsRequest, best: Map<number, SheetYield>) {
    this.#face = face;
    this.#request = request;
    this.#best = best;
    this.#widths = this.#sorted();
    this.#left = [...request.demand];
    this.#least = request.best - request.gap;
    this.#rest = this.#rests();
    this.#most = this.#tooLarge ? new Float64Array() : this.#tables();
  }

  /** @returns false where it is too much */
  run(): boolean {
    return !this.#tooLarge && this.#visit(0, false, this.#face.breadth, 0, 0);
  }

  get #tooLarge(): boolean {
    const rooms = this.#face.breadth + 1;
    return (
      (this.#widths.length + 1) * rooms > MOST_ENTRIES || !this.#request.numbers.exact(2 * rooms)
    );
  }

  #rests(): Float64Array {
    const { breadth, rests } = this.#face;
    const worth = new Float64Array(breadth + 1).fill(NONE);
    for (const { extent, kept } of rests) {
      for (let room = extent; room <= breadth; room++) {
        worth[room] = Math.max(worth[room], this.#request.coin * kept);
      }
    }
    return worth;
  }

  #sorted(): readonly Width[] {
    const { values, coin, numbers } = this.#request;
    const widths = new Map<number, Item[]>();
    for (const strip of this.#face.strips) {
      const worth = strip.counts.reduce(
        (sum, [piece, copies]) => sum + values[piece] * copies,
        coin * strip.kept,
      );
      const items = widths.get(strip.extent) ?? [];
      widths.set(strip.extent, items);
      items.push({ strip, pieces: numbers.of(strip.counts), worth });
    }
    return [...widths]
      .map(([extent, items]) => ({ extent, items: items.sort((a, b) => b.worth - a.worth) }))
      .sort((a, b) => b.extent - a.extent);
  }

  #tables(): Float64Array {
    const rooms = this.#face.breadth + 1;
    const most = new Float64Array((this.#widths.length + 1) * rooms);
    most.set(this.#rest, this.#widths.length * rooms);
    for (let w = this.#widths.length - 1; w >= 0; w--) {
      const { extent, items } = this.#widths[w];
      const from = w * rooms;
      for (let room = 0; room < rooms; room++) {
        const without = most[from + rooms + room];
        const one = room >= extent ? most[from + room - extent] + items[0].worth : NONE;
        most[from + room] = Math.max(one, without);
      }
    }
    return most;
  }

  /**
   * @param last the width of the strip that was taken last; none that follows is wider
   * @param stretched whether one that stretches was taken
   */
  #visit(last: number, stretched: boolean, room: number, worth: number, pieces: number): boolean {
    this.#close(stretched, room, worth, pieces);
    const rooms = this.#face.breadth + 1;
    const { steps } = this.#request;
    for (let w = last; w < this.#widths.length; w++) {
      const from = w * rooms;
      if (worth + this.#most[from + room] < this.#least) break;
      const { extent, items } = this.#widths[w];
      if (!steps.take(1)) return false;
      const left = room - extent;
      if (left < 0) continue;
      const least = this.#least - worth - this.#most[from + left];
      for (let i = 0; i < items.length && items[i].worth >= least; i++) {
        const item = items[i];
        const stretches = stretched || item.strip.stretches;
        const next = [stretches, left, worth + item.worth, pieces + item.pieces] as const;
        if (!steps.take(1)) return false;
        if (!this.#wanted(item) || !this.#fresh(w, ...next)) continue;
        this.#take(item, 1);
        this.#taken.push(item);
        const done = this.#visit(w, ...next);
        this.#taken.pop();
        this.#take(item, -1);
        if (!done) return false;
      }
    }
    return true;
  }

  /** Whether nothing that is worth as much was seen with the same pieces in the same room. */
  #fresh(width: number, stretches: boolean, room: number, worth: number, pieces: number): boolean {
    let seen = this.#seen[width];
    if (seen === undefined) {
      seen = new Map();
      this.#seen[width] = seen;
    }
    const filled = pieces * (this.#face.breadth + 1) + room;
    const key = 2 * filled + Number(stretches);
    if ((seen.get(key) ?? NONE) >= worth) return false;
    this.#request.steps.take(TO_REMEMBER);
    seen.set(key, worth);
    return true;
  }

  #close(stretched: boolean, room: number, worth: number, pieces: number): void {
    const total = worth + this.#rest[room];
    if (total < this.#least || this.#taken.length === 0) return;
    const loss = this.#request.best - total;
    if ((this.#best.get(pieces)?.loss ?? Number.POSITIVE_INFINITY) <= loss) return;
    if (!stretched && !mayRest(room, this.#request.limits)) return;
    const strips = this.#taken.map(({ strip }) => strip);
    this.#best.set(pieces, { pieces, loss, face: this.#face, strips });
  }

  #wanted({ strip }: Item): boolean {
    return strip.counts.every(([piece, copies]) => copies <= this.#left[piece]);
  }

  #take({ strip }: Item, times: number): void {
    for (const [piece, copies] of strip.counts) this.#left[piece] -= times * copies;
  }
}
