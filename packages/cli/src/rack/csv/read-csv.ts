import { DocumentError, type Fault } from '../../faults/fault.js';
import { faultText } from '../../faults/fault-text.js';
import type { ShopUnits } from '../../length/unit.js';
import { readTable, type Table } from '../../spreadsheet/read-table.js';
import { faultAt } from '../../spreadsheet/table-place.js';
import type { MergeLine, RackStock } from '../rack.js';
import { COLUMNS, type ColumnName } from './columns.js';
import { readLineOfRack } from './read-line.js';
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
  const rows = table.rows.map((row) => new RowReader(file, table, row));
  const read = rows.map((row) => ({
    row,
    line: readLineOfRack(row, table.separator, units, shelf),
  }));
  faultMarksTwice(read);
  const faults = [
    ...table.faults.map((fault) => faultAt(file, fault)),
    ...rows.flatMap((row) => row.faults),
  ];
  if (faults.length > 0) throw documentError(file, faults);
  return read.flatMap(({ line }) => line ?? []);
}

function tableOf(text: string, file: string): Table<ColumnName> {
  const read = readTable(text, COLUMNS);
  if (!read.ok) throw documentError(file, [{ complaint: read.complaint, path: [] }]);
  return read.table;
}

function faultMarksTwice(
  read: readonly { readonly row: RowReader; readonly line: MergeLine | undefined }[],
): void {
  const seen = new Map<string, number>();
  for (const { row, line } of read) {
    if (line?.mark === undefined) continue;
    const before = seen.get(line.mark);
    if (before === undefined) seen.set(line.mark, row.row);
    else row.complain('mark', { code: 'mark twice', row: before }, line.mark);
  }
}

function documentError(file: string, faults: readonly Fault[]): DocumentError {
  const rowOf = ({ cell }: Fault) => cell?.row ?? 0;
  const sorted = [...faults].sort((one, other) => rowOf(one) - rowOf(other));
  const message = sorted.map((fault) => faultText(file, fault)).join('\n');
  return new DocumentError(file, sorted, message);
}
