import type { BoxLay } from '../pattern/box.js';
import type { Part, Slice } from '../pattern/part.js';
import { isEmpty } from '../pattern/pattern-key.js';
import type { Rolling } from '../problem.js';

/** What a rectangle can yield, and how. */
export interface Yield {
  /** Its pieces, as one of `Combinations`. */
  readonly pieces: number;
  /** Coins that the remnants are worth. */
  readonly kept: number;
  readonly way: Way;
}

/** How a rectangle is cut up. Lengths are gross: see `pattern/part.ts`. */
export type Way =
  /** Not at all: it is a remnant. */
  | { readonly kind: 'whole' }
  /** It is a piece, once it is trimmed to size. */
  | { readonly kind: 'lay'; readonly lay: BoxLay }
  | WayToCut;

export interface WayToCut {
  readonly kind: 'cut';
  readonly runs: Rolling;
  /** Of the rectangle, square to the cut. */
  readonly breadth: number;
  /** Of what is parted off; the whole breadth where nothing is cut. */
  readonly extent: number;
  readonly near: Yield;
  /** What becomes of the rest; absent where the kerf leaves none. */
  readonly far?: Yield;
}

/**
 * The part that a rectangle is to be cut up as. A piece beyond what is wanted is left
 * in the metal, and slices that hold nothing are left in the rest behind the others,
 * which is worth no less.
 * @param wanted most copies of each piece
 */
export function partOf(found: Yield, wanted: readonly number[]): Part {
  const left = [...wanted];
  const part = ({ way }: Yield): Part => {
    if (way.kind === 'cut') return { kind: 'split', cuts: way.runs, parts: slices(way) };
    if (way.kind === 'whole' || left[way.lay.piece] === 0) return EMPTY;
    const { piece, turned } = way.lay;
    left[piece]--;
    return { kind: 'lay', piece, turned };
  };
  /** Cuts of what lies beyond a cut that run the same way part off further slices. */
  const slices = ({ runs, breadth, extent, near, far }: WayToCut): readonly Slice[] => {
    const first = { extent, part: part(near) };
    const further =
      far === undefined
        ? []
        : far.way.kind === 'cut' && far.way.runs === runs
          ? slices(far.way)
          : [{ extent: breadth - extent, part: part(far) }];
    return [first, ...further].filter((slice) => !isEmpty(slice.part));
  };
  return part(found);
}

const EMPTY: Part = { kind: 'split', cuts: 'along', parts: [] };
