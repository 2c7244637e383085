import { planCutting, verifyPlan } from '../dist/index.js';
import { sum, timed } from './harness.js';

/**
 * Plans an order and judges the plan: verified once more, outside of the timing,
 * and its bound set against its cost.
 * @param options of `planCutting`
 * @returns the figures of a row, and what is wrong with the plan
 */
export async function judgedPlan(problem, options) {
  const { result, ...time } = await timed(() => outcomeOf(problem, options));
  if (result.plan === undefined)
    return { row: { ...time, status: result.status }, faults: [result.status] };
  const { plan } = result;
  const faults = verifyPlan(problem, plan).map(({ message }) => message);
  const { bound, effort, layouts } = plan;
  if (!(bound.cost <= plan.cost)) faults.push(`bound ${bound.cost} above cost ${plan.cost}`);
  if (bound.proven && bound.cost !== plan.cost) {
    faults.push(`said to be proven with bound ${bound.cost} and cost ${plan.cost}`);
  }
  const row = {
    status: result.status,
    bound: bound.cost,
    found: plan.cost,
    gap: plan.cost - bound.cost,
    proven: bound.proven,
    sheets: sum(layouts.map(({ count }) => count)),
    layouts: layouts.length,
    patterns: effort.patterns,
    rounds: effort.rounds,
    integerMasters: effort.integerMasters,
    nodes: effort.nodes,
    ending: effort.ending,
    ...time,
  };
  return { row, faults };
}

/** A planner that throws is at fault, and ends nothing else. */
async function outcomeOf(problem, options) {
  try {
    return await planCutting(problem, options);
  } catch (error) {
    return { status: `threw ${error}` };
  }
}
