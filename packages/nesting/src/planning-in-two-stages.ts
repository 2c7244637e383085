import type { Deadline } from './deadline.js';
import type { BandBook } from './master/band-book.js';
import { leastMoney } from './master/objective.js';
import { MetalGrounds, type MetalGroundsRequest } from './metal-grounds.js';
import type { PlansWithoutValue } from './search/ground.js';
import type { Planned } from './search/planned.js';
import { search } from './search/search.js';

/**
 * Plans for one metal with all stock cut in two stages, which any kind of cutting allows: sought where
 * patterns of more stages take so long to price that they make poor plans in the time there is.
 * @param request what the search for all kinds of patterns works with
 * @param withoutValue plans in two stages made as if remnants were worth nothing
 */
export function planningInTwoStages(
  request: MetalGroundsRequest,
  withoutValue: PlansWithoutValue | undefined,
  seed: number,
) {
  /**
   * `tell` is called now and then, and with each plan that is better than those before.
   * @returns the patterns that came up
   */
  return async (
    until: Deadline,
    tell: (better?: readonly Planned[]) => void,
  ): Promise<BandBook> => {
    const grounds = new MetalGrounds({ ...request, rules: { ...request.rules, stages: 2 } });
    await search({
      ground: grounds.for(leastMoney, until, { withoutValue }),
      known: grounds.start,
      brief: false,
      seed,
      onProgress: () => tell(),
      onBetter: tell,
    });
    return grounds.book;
  };
}
