import { across, other } from '../pattern/cut-up.js';
import type { CuttingRules, FillBox } from '../pattern/cutting-rules.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import type { Rolling } from '../problem.js';
import { fillRoom, NOTHING, type Room } from '../spares/fill-room.js';
import type { Divided } from './slice-pool.js';

/**
 * The share of sheets that must be free, lest it take long and come to nothing. Of 778 tries on
 * sheets of 20 invented orders of which less was free none was of use; of 672 on others, eleven.
 */
const LEAST_FREE = 0.02;

/**
 * Cuts all pieces of some sheets anew from as many sheets, the same filling as
 * often as possible: again and again a box is filled with pieces of which there
 * are enough for several sheets at once, as long as the others keep room enough.
 * @param runs how the first cuts run
 * @param random noise in what pieces are worth, for a search to try several
 * @returns nothing where the pieces do not come out
 */
export function cutAnew(
  sheets: readonly PatternCount[],
  runs: Rolling,
  box: FillBox,
  rules: CuttingRules,
  random: () => number,
): readonly Divided[] | undefined {
  const areas = rules.pieces.map(({ length, width }) => length * width);
  const left = areas.map(() => 0);
  let open = 0;
  for (const { pattern, count } of sheets) {
    open += count;
    for (const [piece, copies] of pattern.counts) left[piece] += copies * count;
  }
  let area = left.reduce((sum, copies, piece) => sum + copies * areas[piece], 0);
  if (area > (1 - LEAST_FREE) * open * box.length * box.width) return undefined;
  // Now and then large pieces count for more than their area: what is large is hard to place last.
  const largest = Math.max(...areas);
  const preference = random();
  const worths = areas.map((area) => area * (area / largest) ** preference * (1 + 0.4 * random()));
  const room = wholeRoom(runs, box, rules);
  const fresh: Divided[] = [];
  let atOnce = open;
  while (open > 0) {
    const count = Math.min(atOnce, open);
    const wanted = left.map((copies) => Math.floor(copies / count));
    const others = (open - count) * box.length * box.width;
    const enough = (filled: number) => area - filled * count <= others;
    // Filling takes long: not where even all that is wanted would not be enough.
    const most = wanted.reduce((sum, copies, piece) => sum + copies * areas[piece], 0);
    const { slices, counts } = enough(most)
      ? fillRoom(room, wanted, worths, box.lays, rules)
      : NOTHING;
    let filled = 0;
    for (const [piece, copies] of counts) filled += copies * areas[piece];
    if (slices.length === 0 || !enough(filled)) {
      if (count === 1) return undefined;
      atOnce = count - Math.ceil(count / 4);
      continue;
    }
    for (const [piece, copies] of counts) left[piece] -= copies * count;
    area -= filled * count;
    open -= count;
    fresh.push({ slices, count });
  }
  return area === 0 ? fresh : undefined;
}

/** A whole box as a room to fill. */
export function wholeRoom(runs: Rolling, box: FillBox, { stages }: CuttingRules): Room {
  return {
    runs,
    depth: across(box, runs),
    breadth: across(box, other(runs)),
    levels: stages === 'free' ? 2 : stages,
  };
}
