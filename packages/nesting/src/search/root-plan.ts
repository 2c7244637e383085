import { shareOf } from '../deadline.js';
import type { BandMaster } from '../master/band-master.js';
import {
  boundAt,
  closerBound,
  type LinearResult,
  solveLinear,
} from '../master/column-generation.js';
import type { SearchGround } from './ground.js';

/** Share of the time left that the linear plan over the patterns of each quicker pricer may take. */
const SHARE_OF_QUICK = 0.2;
/** Share of the time that the linear plan over all patterns of the kind may take. */
const SHARE_OF_ALL = 0.5;

/**
 * The linear plan of the whole problem: by patterns of quicker pricers first, then by all of the kind, bounded
 * as closely as can be. Where these take long to price, it is that of the quicker ones, with a rough bound.
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
  let plan: LinearResult | undefined;
  for (const pricer of ground.inTurn.slice(0, -1)) {
    const deadline = shareOf(ground.deadline, SHARE_OF_QUICK);
    plan = await solveLinear({ ...ground, pricer, master, enough: () => false, deadline });
    ground.effort.rounds += plan.rounds;
    if (!plan.finished && !slow) await onSlow();
    slow ||= !plan.finished;
  }
  const duals = plan?.answer?.duals;
  if (ground.rough !== undefined && plan !== undefined && duals !== undefined) {
    const { bound } = boundAt({ ...ground, pricer: ground.rough.pricer }, duals);
    return { ...plan, bound };
  }
  const deadline = shareOf(ground.deadline, SHARE_OF_ALL);
  plan = await solveLinear({ ...ground, master, enough, deadline });
  ground.effort.rounds += plan.rounds;
  if (!plan.finished && !slow) await onSlow();
  return { ...plan, bound: closerBound(ground, plan) };
}
