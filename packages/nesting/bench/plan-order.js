/**
 * Plans one order in a process of its own, warmed up, with one time limit after the
 * other until the plan is proven best, and tells how much memory it took.
 */
import { judgedPlan } from './judged-plan.js';
import { smallOrder } from './shop-orders.js';

process.once('message', async ({ problem, limits }) => {
  await judgedPlan(smallOrder({ seed: 1, types: 3 }), { timeLimitSeconds: 1 });
  const restMegabytes = megabytes();
  const faults = [];
  let last;
  for (const limit of limits) {
    const judged = await judgedPlan(problem, { timeLimitSeconds: limit });
    faults.push(...judged.faults);
    last = { limit, ...judged.row };
    if (last.proven) break;
  }
  const memory = { restMegabytes, peakMegabytes: megabytes() };
  process.send({ row: { ...last, ...memory }, faults }, () => process.disconnect());
});

/** The most that the process has held so far. */
function megabytes() {
  return process.resourceUsage().maxRSS / 1024;
}
