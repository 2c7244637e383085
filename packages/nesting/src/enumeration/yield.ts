import type { BoxLay } from '../pattern/box.js';
import type { Part, Slice } from '../pattern/part.js';
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

/** The part that a rectangle is to be cut up as. */
export function partOf({ way }: Yield): Part {
  if (way.kind === 'whole') return { kind: 'split', cuts: 'along', parts: [] };
  if (way.kind === 'lay') {
    return { kind: 'lay', piece: way.lay.piece, turned: way.lay.turned };
  }
  return { kind: 'split', cuts: way.runs, parts: slices(way) };
}

/** Cuts of what lies beyond a cut that run the same way part off further slices. */
function slices({ runs, breadth, extent, near, far }: WayToCut): readonly Slice[] {
  const first = { extent, part: partOf(near) };
  if (far === undefined || far.way.kind === 'whole') return [first];
  if (far.way.kind === 'cut' && far.way.runs === runs) return [first, ...slices(far.way)];
  return [first, { extent: breadth - extent, part: partOf(far) }];
}
