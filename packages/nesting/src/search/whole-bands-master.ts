import { type BandAnswer, BandMaster } from '../master/band-master.js';
import type { SearchGround } from './ground.js';
import type { OpenBands } from './open-bands.js';

export interface WholeBandsLimits {
  /** What going without each piece counts; absent where that is not allowed. */
  readonly penalties?: readonly number[];
  /** Nodes that the integer master may take. */
  readonly nodes: number;
  /** How far from the best an answer may be; 0 when absent. */
  readonly gap?: number;
}

/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.25;

/** Whole bands in open slots, by an integer master over the bands that are given. */
export async function solveWholeBands(
  { engines, deadline, effort }: SearchGround,
  { book, bands, slots, demand }: OpenBands,
  { penalties, ...limits }: WholeBandsLimits,
): Promise<BandAnswer | 'infeasible' | 'stopped'> {
  const master = new BandMaster({
    demand,
    classes: [],
    objective: { cost: undefined, caps: [] },
    ...(penalties === undefined ? {} : { penalties }),
    needed: slots.map((count) => -count),
    book,
    engines,
  });
  try {
    master.addFromBook([], bands);
    effort.integerMasters++;
    const seconds = deadline.left() * SHARE_OF_TIME;
    return await master.solve({ integer: true, seconds, ...limits });
  } finally {
    master.close();
  }
}
