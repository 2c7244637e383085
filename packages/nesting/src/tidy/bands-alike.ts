import type { CuttingRules } from '../pattern/cutting-rules.js';
import type { Rolling } from '../problem.js';
import { packAlike } from './pack-alike.js';
import { shareOut } from './share-out.js';
import { type Divided, type Lot, slicePool } from './slice-pool.js';

/** So many different bands may be packed anew together. */
const MOST_BANDS = 40;

/**
 * The bands of sheets, with what lies in those of equal extent shared out anew so
 * that more of them are alike.
 * @param runs how the cuts within bands run
 */
export function bandsAlike(
  sheets: readonly Divided[],
  breadth: number,
  runs: Rolling,
  rules: CuttingRules,
  random: () => number,
): Lot[] {
  const byExtent = new Map<number, Divided[]>();
  const others: Divided[] = [];
  for (const { slices, count } of sheets) {
    for (const slice of slices) {
      const { extent, part } = slice;
      if (part.kind === 'lay' || part.cuts !== runs) {
        others.push({ slices: [slice], count });
        continue;
      }
      const bands = byExtent.get(extent) ?? [];
      bands.push({ slices: part.parts, count });
      byExtent.set(extent, bands);
    }
  }
  const renewed = [...byExtent].flatMap(([extent, bands]) => {
    const divided =
      (bands.length <= MOST_BANDS && random() < 0.3
        ? packAlike(bands, slicePool(bands), breadth, rules.limits, random)
        : undefined) ?? shareOut(bands, slicePool(bands), random);
    return divided.map(({ slices, count }) => {
      const part = { kind: 'split', cuts: runs, parts: slices } as const;
      return { slices: [{ extent, part }], count };
    });
  });
  return slicePool([...renewed, ...others]);
}
