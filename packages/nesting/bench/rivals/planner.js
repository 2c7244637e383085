import { planCutting, verifyPlan } from '../../dist/index.js';
import { sum } from '../harness.js';

export const planner = {
  name: 'planner',
  guillotine: true,
  suits: () => true,
  solve: (problem, seconds) => planCutting(problem, { timeLimitSeconds: seconds }),
  judge: judgePlan,
};

/** What first fit decreasing makes of it: the planner without any time to do better. */
export const firstFit = {
  name: 'first fit',
  guillotine: true,
  suits: () => true,
  solve: (problem) => planCutting(problem, { timeLimitSeconds: 0 }),
  judge: judgePlan,
};

/** Verifies once more and counts: cost, sheets, pieces, and the bound where there is one. */
function judgePlan(problem, outcome) {
  if (outcome.status !== 'planned') return { faults: [outcome.status] };
  const { plan } = outcome;
  const faults = verifyPlan(problem, plan).map(({ message }) => message);
  if (plan.bound.cost > plan.cost) faults.push(`bound ${plan.bound.cost} above ${plan.cost}`);
  return {
    cost: plan.cost,
    sheets: sum(plan.buy.map(({ count }) => count)),
    bound: plan.bound.cost,
    proven: plan.bound.proven,
    faults,
  };
}
