import { type Limits, mayRest } from '../pattern/limits.js';
import type { Slice } from '../pattern/part.js';
import type { Divided, Lot } from './slice-pool.js';

/**
 * Packs the slices of equal rectangles anew into as many rectangles, so that many
 * become alike: again and again a filling is sought that serves as many
 * rectangles as possible at once and still leaves the others room enough (after
 * Haessler 1971, who repeats the pattern that can be repeated most often).
 * @param divided only their number matters
 * @param lots slices to be packed; they are used up
 * @param depth gross ticks that the slices of each rectangle share
 * @param random noise in the choice, for a search to try several
 * @returns nothing where they do not come out
 */
export function packAlike(
  divided: readonly Divided[],
  lots: readonly Lot[],
  depth: number,
  limits: Limits,
  random: () => number,
): readonly Divided[] | undefined {
  let load = 0;
  for (const { slice, left } of lots) load += slice.extent * left;
  let open = divided.reduce((sum, { count }) => sum + count, 0);
  const packed: Divided[] = [];
  while (open > 0) {
    const filling = repeated(lots, depth, load, open, limits, random);
    if (filling === undefined) return undefined;
    const { slices, count } = filling;
    for (const slice of slices) {
      const lot = lots.find((lot) => lot.slice === slice);
      if (lot) lot.left -= count;
      load -= slice.extent * count;
    }
    packed.push(filling);
    open -= count;
  }
  return load === 0 ? packed : undefined;
}

function repeated(
  lots: readonly Lot[],
  depth: number,
  load: number,
  open: number,
  limits: Limits,
  random: () => number,
): Divided | undefined {
  const counts = [...new Set([open, ...lots.map((lot) => lot.left), Math.ceil(open / 2), 1])]
    .filter((count) => count > 0 && count <= open)
    .sort((a, b) => b - a);
  for (const count of counts) {
    if (count > 1 && random() < 0.15) continue;
    const least = (load - (open - count) * depth) / count;
    for (let tries = 0; tries < 3; tries++) {
      const slices = fill(lots, depth, count, tries === 0 ? () => 0 : random);
      const used = slices.reduce((sum, { extent }) => sum + extent, 0);
      if (used >= least && mayRest(depth - used, limits) && slices.length > 0) {
        return { slices, count };
      }
    }
  }
  return undefined;
}

/** The widest first, more or less, as long as there is room. */
function fill(
  lots: readonly Lot[],
  depth: number,
  count: number,
  random: () => number,
): readonly Slice[] {
  const order = lots
    .filter((lot) => lot.left >= count)
    .map((lot) => ({ lot, rank: lot.slice.extent * (1 - 0.5 * random()) }))
    .sort((a, b) => b.rank - a.rank || b.lot.left - a.lot.left);
  let room = depth;
  const slices: Slice[] = [];
  for (const { lot } of order) {
    const fitting = Math.floor(room / lot.slice.extent);
    const taken = Math.min(fitting, Math.floor(lot.left / count));
    room -= taken * lot.slice.extent;
    slices.push(...new Array<Slice>(taken).fill(lot.slice));
  }
  return slices;
}
