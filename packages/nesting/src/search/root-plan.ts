import { shareOf } from '../deadline.js';
import type { BandMaster } from '../master/band-master.js';
import { closerBound, type LinearResult, solveLinear } from '../master/column-generation.js';
import type { SearchGround } from './ground.js';

/** Share of the time that the linear plan over the quick pricer's patterns may take. */
const SHARE_OF_QUICK = 0.2;
/** Share of the time that the linear plan over all patterns of the kind may take. */
const SHARE_OF_ALL = 0.5;

/**
 * The linear plan of the whole problem, bounded as closely as can be: by patterns of the quick pricer
 * first, then by all of the kind.
 * @param master of the whole problem
 * @param enough true once a bound in units of 1/scale is as good as the caller can use
 * @param onSlow called once where patterns take so long to price that the time was not enough for them
 */
export async function rootPlan(
  ground: SearchGround,
  master: BandMaster,
  enough: (scaled: number) => boolean,
  onSlow: () => Promise<void>,
): Promise<LinearResult> {
  let slow = false;
  const quick = ground.pricerFor(ground.demand);
  if (quick !== ground.pricer) {
    const first = await solveLinear({
      ...ground,
      pricer: quick,
      master,
      enough: () => false,
      deadline: shareOf(ground.deadline, SHARE_OF_QUICK),
    });
    ground.effort.rounds += first.rounds;
    slow = !first.finished;
    if (slow) await onSlow();
  }
  const deadline = shareOf(ground.deadline, SHARE_OF_ALL);
  const plan = await solveLinear({ ...ground, master, enough, deadline });
  ground.effort.rounds += plan.rounds;
  if (!plan.finished && !slow) await onSlow();
  return { ...plan, bound: closerBound(ground, plan) };
}
