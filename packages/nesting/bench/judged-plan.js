import { planCutting, verifyPlan } from '../dist/index.js';
import { sum, timed } from './harness.js';

/** A plan within this share of its bound is good enough for most shops. */
const NEAR = 0.01;

/**
 * Plans an order and judges the plan: verified once more, outside of the timing,
 * and its bound set against its cost.
 * @param options of `planCutting`
 * @returns the figures of a row (`boundAfter` and `nearAfter`: seconds of the processor
 * until there was a bound above 0, and a plan near its bound), and what is wrong with the plan
 */
export async function judgedPlan(problem, options) {
  const reached = {};
  const start = process.cpuUsage();
  const spent = () => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e6;
  };
  const onProgress = ({ cost, bound }) => {
    if (bound > 0) reached.boundAfter ??= spent();
    if (cost - bound <= NEAR * cost) reached.nearAfter ??= spent();
  };
  const { result, ...time } = await timed(() => outcomeOf(problem, { ...options, onProgress }));
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
    ...reached,
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
