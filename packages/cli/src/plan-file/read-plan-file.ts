import type { CuttingPlan, CuttingProblem } from '@stripwright/nesting';
import type { z } from 'zod';
import { DocumentError, type Fault } from '../faults/fault.js';
import { faultText } from '../faults/fault-text.js';
import { foundText } from '../order/fields.js';
import { type PlanFile, planFileSchema, SCHEMA_VERSION } from './plan-file.js';
import { toTicks } from './to-ticks.js';

const OTHER_VERSION = `is not ${SCHEMA_VERSION}, the only one that can be read here: plan the order again, or read it with the stripwright that wrote it`;

/** A plan file and what it says in the planner's terms. */
export interface PlanOnFile {
  readonly file: PlanFile;
  readonly problem: CuttingProblem;
  readonly plan: CuttingPlan;
}

/**
 * Reads plan.json back: its schema, then ticks and coins.
 *
 * @param text the contents
 * @param file its name, for the messages
 * @throws DocumentError with every fault, each with the path of its field
 */
export function readPlanFile(text: string, file: string): PlanOnFile {
  const raise = (faults: readonly Fault[]): never => {
    throw new DocumentError(file, faults, faults.map((fault) => faultText(file, fault)).join('\n'));
  };
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('\n')[0] : undefined;
    const complaint = { code: 'not JSON', reason: reason ?? 'unknown cause' } as const;
    return raise([{ complaint, path: [] }]);
  }
  const version = valueAt(raw, ['schemaVersion']);
  if (version !== undefined && version !== SCHEMA_VERSION) {
    return raise([fault({ code: 'schema', reason: OTHER_VERSION }, ['schemaVersion'], raw)]);
  }
  const read = planFileSchema.safeParse(raw);
  if (!read.success) return raise(schemaFaults(read.error, raw));
  const ticks = toTicks(read.data);
  if (!ticks.ok) return raise(ticks.faults);
  return { file: read.data, problem: ticks.problem, plan: ticks.plan };
}

function schemaFaults(error: z.ZodError, raw: unknown): readonly Fault[] {
  return error.issues.flatMap((issue): Fault[] => {
    const path = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
    if (issue.code === 'unrecognized_keys') {
      const complaint = { code: 'schema', reason: 'is not a field of a plan' } as const;
      return issue.keys.map((key) => fault(complaint, [...path, key], raw));
    }
    const missing = valueAt(raw, path) === undefined;
    const complaint = missing
      ? ({ code: 'missing' } as const)
      : ({ code: 'schema', reason: `is not as the format has it (${issue.message})` } as const);
    return [fault(complaint, path, raw)];
  });
}

function fault(complaint: Fault['complaint'], path: Fault['path'], raw: unknown): Fault {
  const value = valueAt(raw, path);
  const found = typeof value === 'object' ? foundText(value) : value?.toString();
  return { complaint, path, ...(found === undefined ? {} : { found }) };
}

function valueAt(raw: unknown, path: Fault['path']): unknown {
  return path.reduce<unknown>((value, step) => {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step))
      return undefined;
    return (value as Readonly<Record<string | number, unknown>>)[step];
  }, raw);
}
