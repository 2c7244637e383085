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

/**
 * Fills a box by the rule of thumb: a strip as wide as the widest piece still wanted, filled with
 * pieces by descending width, then another beside it. Where nothing narrow may be parted, pieces
 * are left out that are a little narrower than their strip, and the last piece or strip where a
 * little would be left beyond it.
 * @param cuts how the first cuts run, which part the strips
 * @param demand copies of each piece that are wanted
 * @returns undefined where no strip can be made
 */
export function fillByStrips(
  box: Box,
  cuts: Rolling,
  demand: readonly number[],
  limits: Limits,
): Part | undefined {
  const straight = cuts === 'along';
  const [length, breadth] = straight ? [box.length, box.width] : [box.width, box.length];
  const upright = ({ along, across }: StripPiece) => along < across;
  // Long side along the strip first, wide before narrow.
  const order = box.lays
    .map((lay): StripPiece => {
      const [along, across] = straight ? [lay.length, lay.width] : [lay.width, lay.length];
      return { lay, along, across };
    })
    .filter(
      ({ along, across }) => mayPart(along, length, limits) && mayPart(across, breadth, limits),
    )
    .sort(
      (a, b) => Number(upright(a)) - Number(upright(b)) || b.across - a.across || b.along - a.along,
    );
  const wanted = [...demand];
  const strips: { extent: number; pieces: readonly StripPiece[] }[] = [];
  let room = breadth;
  for (const first of order) {
    while (first.across <= room && wanted[first.lay.piece] > 0) {
      const pieces = fillStrip(first, order, length, wanted, limits);
      if (pieces.length === 0) break;
      strips.push({ extent: first.across, pieces });
      room -= first.across;
    }
  }
  if (!mayRest(room, limits)) strips.pop();
  if (strips.length === 0) return undefined;
  const across = straight ? 'across' : 'along';
  const parts = strips.map(({ extent, pieces }): Slice => {
    const slices = pieces.map(({ lay, along }): Slice => {
      return { extent: along, part: { kind: 'lay', piece: lay.piece, turned: lay.turned } };
    });
    return { extent, part: { kind: 'split', cuts: across, parts: slices } };
  });
  return { kind: 'split', cuts, parts };
}

/** Pieces of a strip as wide as the first; they are taken off what is wanted. */
function fillStrip(
  first: StripPiece,
  order: readonly StripPiece[],
  length: number,
  wanted: number[],
  limits: Limits,
): readonly StripPiece[] {
  const pieces: StripPiece[] = [];
  let left = length;
  for (const next of [first, ...order]) {
    const { lay, along, across } = next;
    const copies = Math.min(wanted[lay.piece], Math.floor(left / along));
    if (copies <= 0 || !mayTrim(next, first.across - across, limits)) continue;
    for (let i = 0; i < copies; i++) pieces.push(next);
    wanted[lay.piece] -= copies;
    left -= copies * along;
  }
  while (!mayRest(left, limits)) {
    const last = pieces.pop();
    if (last === undefined) break;
    wanted[last.lay.piece]++;
    left += last.along;
  }
  return pieces;
}

/** Whether so much may be parted off, or is all there is. */
function mayPart(size: number, whole: number, { kerf, narrowest }: Limits): boolean {
  return size === whole || size - kerf >= narrowest;
}

/** Whether a piece may lie in a strip which is wider by so much. */
function mayTrim({ along }: StripPiece, wider: number, limits: Limits): boolean {
  if (wider === 0) return true;
  return wider > 0 && mayRest(wider, limits) && along - limits.kerf <= limits.longestCut;
}
