import { foldSpelling } from '../../faults/nearest-spelling.js';
import { readTable } from '../../spreadsheet/read-table.js';
import { COLUMNS } from './columns.js';

/** Whether a text is a table with all columns of a rack, each by its own name. */
export function isRackTable(text: string): boolean {
  const [head = ''] = text.split(/\r?\n/, 1);
  const read = readTable(head, COLUMNS);
  if (!read.ok) return false;
  const { columns } = read.table;
  return COLUMNS.every((name) => foldSpelling(columns.get(name)?.heading ?? '') === name);
}
