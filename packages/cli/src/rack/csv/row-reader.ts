import type { Complaint, Fault } from '../../faults/fault.js';
import type { Reading } from '../../faults/reading.js';
import type { Table, TableRow } from '../../spreadsheet/read-table.js';
import { faultAt } from '../../spreadsheet/table-place.js';
import type { ColumnName } from './columns.js';

/** Reads the cells of one row into values, and collects what is wrong with them. */
export class RowReader {
  /** As a spreadsheet counts it. */
  readonly row: number;
  /** The line of the file where it begins. */
  readonly line: number;
  readonly faults: Fault[] = [];
  readonly #file: string;
  readonly #table: Table<ColumnName>;
  readonly #cells: TableRow<ColumnName>['cells'];

  constructor(file: string, table: Table<ColumnName>, { row, line, cells }: TableRow<ColumnName>) {
    this.row = row;
    this.line = line;
    this.#file = file;
    this.#table = table;
    this.#cells = cells;
  }

  /** What a cell says; undefined where the table has no such column. */
  text(column: ColumnName): string | undefined {
    return this.#cells.get(column);
  }

  /**
   * What a cell means, or undefined where that is wrong, which is noted.
   *
   * @param meanings `absent` where there is no such column, `blank` for an empty cell
   */
  value<T>(
    column: ColumnName,
    meanings: {
      readonly absent: () => Reading<T>;
      readonly blank: () => Reading<T>;
      readonly read: (text: string) => Reading<T>;
    },
  ): T | undefined {
    const text = this.text(column);
    const reading =
      text === undefined ? meanings.absent() : text === '' ? meanings.blank() : meanings.read(text);
    if (reading.ok) return reading.value;
    this.complain(column, reading.complaint);
    return undefined;
  }

  /** @param found what stands there, where that is better told than as it is written */
  complain(column: ColumnName, complaint: Complaint, found = this.text(column)): void {
    const { index, heading = column } = this.#table.columns.get(column) ?? {};
    const said = found === undefined || found === '' ? {} : { found };
    const place = index === undefined ? {} : { column: index };
    this.faults.push(faultAt(this.#file, { complaint, row: this.row, heading, ...place, ...said }));
  }
}
