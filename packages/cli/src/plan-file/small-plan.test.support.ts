import { realPlanner } from '../environment.test.support.js';
import { orderToProblem } from '../order/order-to-problem.js';
import { read, SMALL_ORDER } from '../order/small-order.test.support.js';
import type { PlanFile } from './plan-file.js';
import { toPlanFile } from './to-plan-file.js';

/** The small order, really planned. */
export async function smallPlan(text = SMALL_ORDER) {
  const order = read(text);
  const problem = orderToProblem(order);
  const outcome = await realPlanner.planCutting(problem);
  if (outcome.status !== 'planned') throw new Error(`The small order is ${outcome.status}.`);
  return { order, problem, plan: outcome.plan, file: toPlanFile(order, problem, outcome.plan) };
}

/** A copy that may be spoilt. */
export function copyOf(file: PlanFile): PlanFile {
  return structuredClone(file);
}

/** What an array holds at an index, for sure. */
export function at<T>(list: readonly T[], index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new Error(`Nothing at ${index}.`);
  return entry;
}
