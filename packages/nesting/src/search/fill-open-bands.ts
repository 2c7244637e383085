import { BandMaster } from '../master/band-master.js';
import type { SearchGround } from './ground.js';
import type { DecimatedBands } from './open-bands.js';

/** Nodes that the integer master may take, and how far from the best an answer may be. */
const NODES = 150;
const GOOD_ENOUGH = 0.3;
/** Share of the time left that it may take. */
const SHARE_OF_TIME = 0.25;

/**
 * Fills the slots that are open with the bands that are likely in them, so that the pieces
 * that lack weigh as little as an integer master finds in a few nodes.
 * @param weights what going without each piece counts
 * @returns by band of the book, how many there are with those that were settled; undefined
 *   where there is no time
 */
export async function fillOpenBands(
  { engines, deadline, effort }: SearchGround,
  open: DecimatedBands,
  weights: readonly number[],
): Promise<readonly number[] | undefined> {
  const { book, bands, slots, demand, taken } = open;
  const master = new BandMaster({
    demand,
    classes: [],
    objective: { cost: undefined, caps: [] },
    penalties: weights,
    needed: slots.map((count) => -count),
    book,
    engines,
  });
  try {
    master.addFromBook([], bands);
    effort.integerMasters++;
    const seconds = deadline.left() * SHARE_OF_TIME;
    const answer = await master.solve({ integer: true, seconds, nodes: NODES, gap: GOOD_ENOUGH });
    if (typeof answer === 'string') return undefined;
    return taken.map((count, band) => count + (answer.bands[band] ?? 0));
  } finally {
    master.close();
  }
}
