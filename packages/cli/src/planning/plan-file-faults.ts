import type { PlanFault } from '@stripwright/nesting';
import { ProblemError } from '@stripwright/nesting';
import type { Environment } from '../environment.js';
import { faultText } from '../faults/fault-text.js';
import { agreementFaults } from '../plan-file/agreement-faults.js';
import type { PlanOnFile } from '../plan-file/read-plan-file.js';

/**
 * All that is wrong with a plan as its file has it, one line each: where its parts
 * contradict each other, and where the plan does not hold.
 * @param name of the file
 */
export function planFileFaults(
  name: string,
  onFile: PlanOnFile,
  { planner }: Pick<Environment, 'planner'>,
): readonly string[] {
  return [
    ...agreementFaults(onFile.file).map((fault) => faultText(name, fault)),
    ...planFaults(onFile, planner).map((message) => `${name}: ${message}`),
  ];
}

function planFaults(
  { problem, plan }: PlanOnFile,
  planner: Environment['planner'],
): readonly string[] {
  try {
    return planner.verifyPlan(problem, plan).map(placed);
  } catch (error) {
    // The file states a problem that makes no sense; the message names its part.
    if (error instanceof ProblemError) return [error.message];
    throw error;
  }
}

function placed({ layout, message }: PlanFault): string {
  return layout === undefined ? `plan ${message}` : `layouts[${layout}] ${message}`;
}
