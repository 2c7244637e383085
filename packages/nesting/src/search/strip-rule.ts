import type { Box, BoxLay } from '../pattern/box.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import type { Rolling } from '../problem.js';

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
  }

  /** @param demand copies of each piece that are wanted */
  fill(demand: readonly number[]): Filled {
    const wanted = [...demand];
    const inHand = new Map<number, number>();
    const order = this.#order.filter(({ lay }) => wanted[lay.piece] > 0);
    const shortest = order.reduce((least, { along }) => Math.min(least, along), this.#length);
    const strips: { extent: number; pieces: readonly StripPiece[] }[] = [];
    let room = this.#breadth;
    for (const first of order) {
      while (first.across <= room && wanted[first.lay.piece] > 0) {
        const pieces = this.#strip(first, order, shortest, wanted, (piece) => {
          const copies = demand[piece] - wanted[piece];
          inHand.set(piece, Math.max(inHand.get(piece) ?? 0, copies));
        });
        if (pieces.length === 0) break;
        strips.push({ extent: first.across, pieces });
        room -= first.across;
      }
    }
    if (!mayRest(room, this.#limits)) strips.pop();
    if (strips.length === 0) return { part: undefined, inHand };
    const across = this.#cuts === 'along' ? 'across' : 'along';
    const parts = strips.map(({ extent, pieces }): Slice => {
      const slices = pieces.map(({ lay, along }): Slice => {
        return { extent: along, part: { kind: 'lay', piece: lay.piece, turned: lay.turned } };
      });
      return { extent, part: { kind: 'split', cuts: across, parts: slices } };
    });
    return { part: { kind: 'split', cuts: this.#cuts, parts }, inHand };
  }

  /**
   * Pieces of a strip as wide as the first; they are taken off what is wanted.
   * @param onTaken told of each piece that was taken
   */
  #strip(
    first: StripPiece,
    order: readonly StripPiece[],
    shortest: number,
    wanted: number[],
    onTaken: (piece: number) => void,
  ): readonly StripPiece[] {
    const limits = this.#limits;
    const pieces: StripPiece[] = [];
    let left = this.#length;
    const take = (next: StripPiece) => {
      const { lay, along, across } = next;
      const copies = Math.min(wanted[lay.piece], Math.floor(left / along));
      if (copies <= 0 || !mayTrim(next, first.across - across, limits)) return;
      for (let i = 0; i < copies; i++) pieces.push(next);
      wanted[lay.piece] -= copies;
      left -= copies * along;
      onTaken(lay.piece);
    };
    take(first);
    for (let i = 0; i < order.length && left >= shortest; i++) {
      const next = order[i];
      if (next.along <= left && next.across <= first.across) take(next);
    }
    while (!mayRest(left, limits)) {
      const last = pieces.pop();
      if (last === undefined) break;
      wanted[last.lay.piece]++;
      left += last.along;
    }
    return pieces;
  }
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
