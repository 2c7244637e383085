import { BYTE_ORDER_MARK } from '../spreadsheet/byte-order-mark.js';
import { harmless } from '../spreadsheet/cell-guard.js';
import { writeTable } from '../spreadsheet/write-table.js';

/** A cell: words, or a figure that is written as it stands. */
export type Cell = string | { readonly figure: string };

/** A figure with at most so many decimals, without zeros at its end. */
export const figure = (value: number, decimals = 6): Cell => ({
  figure: `${Number(value.toFixed(decimals))}`,
});

/** Money to two decimals, without a sign of the currency. */
export const moneyFigure = (coins: number): Cell => ({ figure: (coins / 100).toFixed(2) });

/** A table of the packet as a file for spreadsheets, its words never taken for formulas. */
export function csvText(headings: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const written = rows.map((row) =>
    row.map((cell) => (typeof cell === 'string' ? harmless(cell) : cell.figure)),
  );
  return `${BYTE_ORDER_MARK}${writeTable([headings, ...written])}`;
}
