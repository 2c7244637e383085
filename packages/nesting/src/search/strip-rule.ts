import type { Box, BoxLay } from '../pattern/box.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import type { Rolling } from '../problem.js';
import { FirstWithin } from './first-within.js';

/** A lay as a strip has it; gross ticks. */
interface StripPiece {
  readonly lay: BoxLay;
  readonly along: number;
  readonly across: number;
}

/** What a box is filled with. */
export interface Filled {
  /** Undefined where no strip can be made. */
  readonly part: Part | undefined;
  /**
   * By piece, how many copies were in hand at most. As long as so many of each are wanted, and of others
   * no more than were, the box is filled just so.
   */
  readonly inHand: ReadonlyMap<number, number>;
}

/**
 * Fills a box by the rule of thumb: a strip as wide as the widest piece still wanted, filled with
 * pieces by descending width, then another beside it. Where nothing narrow may be parted, pieces
 * are left out that are a little narrower than their strip, and the last piece or strip where a
 * little would be left beyond it.
 */
export class StripRule {
  readonly #cuts: Rolling;
  readonly #limits: Limits;
  readonly #length: number;
  readonly #breadth: number;
  /** Long side along the strip first, wide before narrow. */
  readonly #order: readonly StripPiece[];
  /** Where those begin that are longer across the strip. */
  readonly #uprightFrom: number;
  /** How long each is along the strip; those that are wanted no more are taken out. */
  readonly #alongs: FirstWithin;

  /** @param cuts how the first cuts run, which part the strips */
  constructor(box: Box, cuts: Rolling, limits: Limits) {
    const straight = cuts === 'along';
    const [length, breadth] = straight ? [box.length, box.width] : [box.width, box.length];
    const upright = ({ along, across }: StripPiece) => along < across;
    this.#cuts = cuts;
    this.#limits = limits;
    this.#length = length;
    this.#breadth = breadth;
    this.#order = box.lays
      .map((lay): StripPiece => {
        const [along, across] = straight ? [lay.length, lay.width] : [lay.width, lay.length];
        return { lay, along, across };
      })
      .filter(
        ({ along, across }) => mayPart(along, length, limits) && mayPart(across, breadth, limits),
      )
      .sort(
        (a, b) =>
          Number(upright(a)) - Number(upright(b)) || b.across - a.across || b.along - a.along,
      );
    this.#uprightFrom = this.#order.filter((piece) => !upright(piece)).length;
    this.#alongs = new FirstWithin(this.#order.map(({ along }) => along));
  }

  /** @param demand copies of each piece that are wanted, no more than when it was called last */
  fill(demand: readonly number[]): Filled {
    const inHand = new InHand(demand);
    const strips: { extent: number; pieces: readonly StripPiece[] }[] = [];
    let room = this.#breadth;
    for (let at = this.#next(0, room, this.#length, inHand); at >= 0; ) {
      const first = this.#order[at];
      const pieces = this.#strip(first, inHand);
      if (pieces.length > 0) {
        strips.push({ extent: first.across, pieces });
        room -= first.across;
      }
      at = this.#next(pieces.length > 0 ? at : at + 1, room, this.#length, inHand);
    }
    if (!mayRest(room, this.#limits)) strips.pop();
    if (strips.length === 0) return { part: undefined, inHand: inHand.most };
    const across = this.#cuts === 'along' ? 'across' : 'along';
    const parts = strips.map(({ extent, pieces }): Slice => {
      const slices = pieces.map(({ lay, along }): Slice => {
        return { extent: along, part: { kind: 'lay', piece: lay.piece, turned: lay.turned } };
      });
      return { extent, part: { kind: 'split', cuts: across, parts: slices } };
    });
    return { part: { kind: 'split', cuts: this.#cuts, parts }, inHand: inHand.most };
  }

  /** Pieces of a strip as wide as the first; they are taken in hand. */
  #strip(first: StripPiece, inHand: InHand): readonly StripPiece[] {
    const limits = this.#limits;
    const pieces: StripPiece[] = [];
    let left = this.#length;
    const take = (next: StripPiece) => {
      const { lay, along, across } = next;
      const copies = Math.min(inHand.left(lay.piece), Math.floor(left / along));
      if (copies <= 0 || !mayTrim(next, first.across - across, limits)) return;
      for (let i = 0; i < copies; i++) pieces.push(next);
      inHand.take(lay.piece, copies);
      left -= copies * along;
    };
    take(first);
    const following = (from: number) => this.#next(from, first.across, left, inHand);
    for (let at = following(0); at >= 0; at = following(at + 1)) take(this.#order[at]);
    while (!mayRest(left, limits)) {
      const last = pieces.pop();
      if (last === undefined) break;
      inHand.take(last.lay.piece, -1);
      left += last.along;
    }
    return pieces;
  }

  /**
   * The next piece in order that is still wanted and no larger than so much.
   * @returns its place, or -1
   */
  #next(from: number, across: number, along: number, inHand: InHand): number {
    const order = this.#order;
    const upright = this.#uprightFrom;
    let at = from;
    for (;;) {
      // Both halves of the order grow narrower.
      const end = at < upright ? upright : order.length;
      if (order[at] !== undefined && order[at].across > across) {
        at = firstPlace(at, end, (place) => order[place].across <= across);
      }
      if (at === end && end < order.length) continue;
      at = this.#alongs.from(at, along);
      if (at < 0) return -1;
      const { lay, across: own } = order[at];
      if (inHand.wanted(lay.piece) <= 0) this.#alongs.remove(at);
      else if (own <= across && inHand.left(lay.piece) > 0) return at;
      else at++;
    }
  }
}

/** Copies that are taken for one box. */
class InHand {
  /** By piece, the most there were at once. */
  readonly most = new Map<number, number>();
  readonly #demand: readonly number[];
  readonly #taken = new Map<number, number>();

  constructor(demand: readonly number[]) {
    this.#demand = demand;
  }

  wanted(piece: number): number {
    return this.#demand[piece];
  }

  /** Copies that are still wanted. */
  left(piece: number): number {
    return this.#demand[piece] - (this.#taken.get(piece) ?? 0);
  }

  take(piece: number, copies: number): void {
    const taken = (this.#taken.get(piece) ?? 0) + copies;
    this.#taken.set(piece, taken);
    this.most.set(piece, Math.max(this.most.get(piece) ?? 0, taken));
  }
}

/** The first place from `from` to `end` for which something holds that holds for all after it. */
function firstPlace(from: number, end: number, holds: (place: number) => boolean): number {
  let [low, high] = [from, end];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Whether so much may be parted off, or is all there is. */
function mayPart(size: number, whole: number, { kerf, narrowest }: Limits): boolean {
  return size === whole || size - kerf >= narrowest;
}

/** Whether a piece may lie in a strip which is wider by so much. */
function mayTrim({ along }: StripPiece, wider: number, limits: Limits): boolean {
  if (wider === 0) return true;
  return mayRest(wider, limits) && along - limits.kerf <= limits.longestCut;
}
