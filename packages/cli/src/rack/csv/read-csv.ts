import { DocumentError, type Fault } from '../../faults/fault.js';
import { faultText } from '../../faults/fault-text.js';
import type { ShopUnits } from '../../length/unit.js';
import type { MergeLine, RackStock } from '../rack.js';
import { readLineOfRack } from './read-line.js';
import { NotATable, readTable, type Table } from './read-table.js';
import { RowReader } from './row-reader.js';

/** What is on the rack that a table is read for. */
export interface Shelf {
  find(mark: string): RackStock | undefined;
  /** All marks, for those that were misspelt. */
  marks(): readonly string[];
}

/**
 * Reads a rack as CSV, as `writeRackCsv` wrote it and a spreadsheet may have changed it.
 *
 * @param file its name, for messages
 * @param units those of bare numbers
 * @throws DocumentError with everything that is wrong in it
 */
export function readRackCsv(
  text: string,
  file: string,
  units: ShopUnits,
  shelf: Shelf,
): readonly MergeLine[] {
  const table = tableOf(text, file);
  const rows = table.rows.map((row) => new RowReader(table, row));
  const lines = rows.flatMap((row) => readLineOfRack(row, table.separator, units, shelf) ?? []);
  const faults = [...table.faults, ...rows.flatMap((row) => row.faults), ...marksTwice(lines)];
  if (faults.length > 0) throw documentError(file, faults);
  return lines;
}

function tableOf(text: string, file: string): Table {
  try {
    return readTable(text);
  } catch (error) {
    if (error instanceof NotATable) throw documentError(file, [error.fault]);
    throw error;
  }
}

function marksTwice(lines: readonly MergeLine[]): readonly Fault[] {
  const seen = new Map<string, number>();
  return lines.flatMap(({ mark, line }): readonly Fault[] => {
    if (mark === undefined) return [];
    const before = seen.get(mark);
    seen.set(mark, before ?? line);
    if (before === undefined) return [];
    const complaint = { code: 'mark twice', line: before } as const;
    return [{ complaint, path: ['mark'], line, found: mark }];
  });
}

function documentError(file: string, faults: readonly Fault[]): DocumentError {
  const sorted = [...faults].sort((one, other) => (one.line ?? 0) - (other.line ?? 0));
  const message = sorted.map((fault) => faultText(file, fault)).join('\n');
  return new DocumentError(file, sorted, message);
}
