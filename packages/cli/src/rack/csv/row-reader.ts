import type { Complaint, Fault } from '../../faults/fault.js';
import type { Reading } from '../../faults/reading.js';
import type { ColumnName } from './columns.js';
import type { Table, TableRow } from './read-table.js';

/** Reads the cells of one line into values, and collects what is wrong with them. */
export class RowReader {
  readonly line: number;
  readonly faults: Fault[] = [];
  readonly #table: Table;
  readonly #row: TableRow;

  constructor(table: Table, row: TableRow) {
    this.line = row.line;
    this.#table = table;
    this.#row = row;
  }

  /** What a cell says; undefined where the table has no such column. */
  text(column: ColumnName): string | undefined {
    return this.#table.has.has(column) ? (this.#row.cells.get(column) ?? '') : undefined;
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

  complain(column: ColumnName, complaint: Complaint): void {
    const text = this.text(column);
    const found = text === undefined || text === '' ? {} : { found: text };
    this.faults.push({ complaint, path: [column], line: this.line, ...found });
  }
}
