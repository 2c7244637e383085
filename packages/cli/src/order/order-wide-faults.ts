import type { Fault, FieldPath } from '../faults/fault.js';
import { fieldOf } from './order-context.js';
import type { RawValue } from './yaml-tree.js';

/**
 * Faults that no single field shows: names that two entries share, and no stock
 * at all. Looked for in the text as written, so that they are found even where
 * other fields are at fault.
 */
export function orderWideFaults(raw: RawValue): readonly Fault[] {
  return [
    ...sharedNames(raw, ['items']),
    ...sharedNames(raw, ['sheets', 'offcuts']),
    ...missingStock(raw),
  ];
}

function missingStock(raw: RawValue): readonly Fault[] {
  const isSection = typeof raw === 'object' && raw !== null && !Array.isArray(raw);
  const stocked = ['sheets', 'offcuts'].some((list) => {
    const entries = fieldOf(raw, list);
    return entries !== undefined && !(Array.isArray(entries) && entries.length === 0);
  });
  if (!isSection || stocked) return [];
  const hint = 'at least one sheet or offcut to cut from';
  return [{ complaint: { code: 'missing', hint }, path: ['sheets'] }];
}

function sharedNames(raw: RawValue, lists: readonly string[]): readonly Fault[] {
  const firsts = new Map<string, FieldPath>();
  const faults: Fault[] = [];
  for (const list of lists) {
    const entries = fieldOf(raw, list);
    if (!Array.isArray(entries)) continue;
    entries.forEach((entry: RawValue, index) => {
      const name = fieldOf(entry, 'name');
      if (typeof name !== 'string' || name.trim() === '') return;
      const path = [list, index, 'name'];
      const first = firsts.get(name.trim());
      if (first === undefined) {
        firsts.set(name.trim(), path);
      } else {
        const complaint = { code: 'duplicate name', first } as const;
        faults.push({ complaint, path, found: name });
      }
    });
  }
  return faults;
}
