import { stringify } from 'csv-stringify/sync';

/** A cell: words, or a figure that is written as it stands. */
export type Cell = string | { readonly figure: string };

/** A figure with at most so many decimals, without zeros at its end. */
export const figure = (value: number, decimals = 6): Cell => ({
  figure: `${Number(value.toFixed(decimals))}`,
});

/** Money to two decimals, without a sign of the currency. */
export const moneyFigure = (coins: number): Cell => ({ figure: (coins / 100).toFixed(2) });

/**
 * Comma-separated values as RFC 4180 has them: lines end with CR LF, cells with commas,
 * quotes or line breaks are quoted. A byte order mark leads, by which spreadsheets know
 * that it is UTF-8.
 */
export function csvText(headings: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const written = rows.map((row) =>
    row.map((cell) => (typeof cell === 'string' ? harmless(cell) : cell.figure)),
  );
  return stringify([[...headings], ...written], {
    bom: true,
    record_delimiter: 'windows',
    // One half of CR LF alone ends a line for many readers.
    quoted_match: /[\r\n]/u,
  });
}

/** Full-width forms are taken for the plain ones by some spreadsheets. */
const STARTS_A_FORMULA = /^[=+\-@\t\r\n＝＋－＠]/u;

/**
 * Words that a spreadsheet would reckon out, with an apostrophe before them, which makes
 * them words again (OWASP, CSV Injection).
 */
function harmless(words: string): string {
  return STARTS_A_FORMULA.test(words) ? `'${words}` : words;
}
