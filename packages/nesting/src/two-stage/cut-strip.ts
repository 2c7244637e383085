import type { SplitPart } from '../pattern/part.js';
import type { Rolling } from '../problem.js';
import type { StripFamily } from './strip-family.js';
import type { LayCounts } from './strip-knapsack.js';

/** A strip cut to length, its widest pieces first. */
export function cutStrip(family: StripFamily, lays: LayCounts, cuts: Rolling): SplitPart {
  const parts = [...lays].reverse().flatMap(([index, copies]) => {
    const lay = family.lays[index];
    const turned = (cuts === 'along') === lay.crosswise;
    const part = { kind: 'lay', piece: lay.piece, turned } as const;
    return new Array<SplitPart['parts'][number]>(copies).fill({ extent: lay.along, part });
  });
  return { kind: 'split', cuts: cuts === 'along' ? 'across' : 'along', parts };
}
