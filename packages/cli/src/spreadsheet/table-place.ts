import type { Cell, Fault } from '../faults/fault.js';
import { columnLetter } from './column-letter.js';
import type { TableFault } from './read-table.js';

/** A place in a table. @param index of the column, from 0; absent for the row as a whole */
export function cellAt(file: string, row: number, index?: number): Cell {
  return { file, row, column: index === undefined ? undefined : columnLetter(index) };
}

/** What is wrong with a table, as a fault of the file that holds it. */
export function faultAt(
  file: string,
  { complaint, row, column, heading, found }: TableFault,
): Fault {
  return {
    complaint,
    path: heading === undefined ? [] : [heading],
    cell: cellAt(file, row, column),
    ...(found === undefined ? {} : { found }),
  };
}
