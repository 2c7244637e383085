import type { SearchGround } from './ground.js';
import type { DecimatedBands } from './open-bands.js';
import { solveWholeBands } from './whole-bands-master.js';

/** Bands that the integer master works with at most, those that are likeliest. */
const BANDS = 300;
/** Nodes that the integer master may take, and how far from the best an answer may be. */
const NODES = 150;
const GOOD_ENOUGH = 0.3;

/**
 * Fills the slots that are open with the bands that are likely in them, so that the pieces
 * that lack weigh as little as an integer master finds in a few nodes.
 * @param weights what going without each piece counts
 * @returns by band of the book, how many there are with those that were settled; undefined
 *   where there is no time
 */
export async function fillOpenBands(
  ground: SearchGround,
  open: DecimatedBands,
  weights: readonly number[],
): Promise<readonly number[] | undefined> {
  const limits = { penalties: weights, nodes: NODES, gap: GOOD_ENOUGH };
  const few = { ...open, bands: open.bands.slice(0, BANDS) };
  const answer = await solveWholeBands(ground, few, limits);
  if (typeof answer === 'string') return undefined;
  return open.taken.map((count, band) => count + (answer.bands[band] ?? 0));
}
