import { shareOf } from '../deadline.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { keptCoins } from './planned.js';

/** Share of the time left that it may take, and share of that for one try. */
const SHARE_OF_TIME = 0.7;
const SHARE_OF_TRY = 0.4;
/** What share of what lies between plan and bound is tried to be gained first. */
const FIRST = 0.4;
/** Shares this close to each other are not told apart. */
const CLOSE = 0.1;
const ROUNDING = 1e-9;

/**
 * A plan made as if remnants were worth nothing leaves scrap all over. Another is sought for no more
 * money that leaves a large remnant, as large as can be found by halving what lies between a size that was
 * found and one that was not.
 */
export async function leaveLargerRemnant(
  ground: SearchGround,
  incumbent: Incumbent,
): Promise<void> {
  const { withoutValue } = ground;
  const { planned, cost, bound } = incumbent;
  if (withoutValue === undefined || planned === undefined) return;
  const until = shareOf(ground.deadline, SHARE_OF_TIME);
  const kept = keptCoins(planned);
  const gap = cost - bound;
  let found = 0;
  let inVain = 1;
  let share = FIRST;
  while (!incumbent.met && until.left() > 0 && inVain - found > CLOSE) {
    const coins = kept + Math.max(1, Math.ceil(share * gap - ROUNDING));
    const better = await withoutValue.leaving(coins, planned, shareOf(until, SHARE_OF_TRY));
    incumbent.offer(better);
    incumbent.tell('local search');
    if (better === undefined) inVain = share;
    else found = Math.max(share, (cost - incumbent.cost) / gap);
    share = (found + inVain) / 2;
  }
}
