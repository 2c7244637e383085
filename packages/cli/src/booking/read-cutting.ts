import type { Environment } from '../environment.js';
import { DocumentError } from '../faults/fault.js';
import { finishPacketOf } from '../packet/packet-folder.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { readPlanFile } from '../plan-file/read-plan-file.js';
import { planFileFaults } from '../planning/plan-file-faults.js';
import type { PlannedCutting } from '../rack/rack.js';
import { readInput } from '../read-input.js';
import { toPlannedCutting } from './planned-cutting.js';

/** A plan that may be held or booked, with its file. */
export interface CuttingOnFile {
  readonly file: PlanFile;
  readonly cutting: PlannedCutting;
}

/**
 * Reads a plan file and verifies the plan, as `stripwright check` does.
 * @throws DocumentError with all that is wrong
 */
export async function readCutting(name: string, environment: Environment): Promise<CuttingOnFile> {
  await finishPacketOf(name, environment);
  const onFile = readPlanFile(await readInput(name, environment), name);
  const faults = planFileFaults(name, onFile, environment);
  if (faults.length > 0) throw new DocumentError(name, [], faults.join('\n'));
  return { file: onFile.file, cutting: toPlannedCutting(onFile) };
}
