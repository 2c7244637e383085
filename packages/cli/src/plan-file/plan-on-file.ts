import type { PlanFile } from './plan-file.js';
import type { PlanOnFile } from './read-plan-file.js';
import { toTicks } from './to-ticks.js';

/**
 * A plan file with what it says in the planner's terms.
 * @param file one that was written here, or read and checked
 * @throws Error where a length is off the marks, which no such file has
 */
export function planOnFile(file: PlanFile): PlanOnFile {
  const ticks = toTicks(file);
  if (!ticks.ok) throw new Error('A plan has lengths or amounts that are not whole.');
  return { file, problem: ticks.problem, plan: ticks.plan };
}
