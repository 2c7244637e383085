import { createHash } from 'node:crypto';
import type { PlanFile } from '../plan-file/plan-file.js';

/**
 * What tells a plan from all others: the SHA-256 digest of its contents, whatever the
 * white space of its file and the order of its fields.
 */
export function planDigest(file: PlanFile): string {
  return createHash('sha256').update(canonical(file)).digest('hex');
}

/** JSON without white space, the fields of each object in the order of their names. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value)
    .filter(([, entry]) => entry !== undefined)
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, entry]) => `${JSON.stringify(name)}:${canonical(entry)}`);
  return `{${fields.join(',')}}`;
}
