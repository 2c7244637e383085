/** Goes before what a spreadsheet would take for something else than a text, and before itself. */
const GUARD = "'";

/**
 * How texts begin that a spreadsheet takes for a formula: the ASCII signs, what it may pass over
 * before them, and their fullwidth forms (OWASP, CSV Injection).
 */
const FORMULA = /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;
/** A figure in front may make it a number, a date or a time: `3-4`, `007`, `1E5`. */
const FIGURE = /^[.,]?\p{N}/u;
/** So may the name of a month before a figure: `Mar 3`, `may7`. */
const MONTH = /^(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\p{L}*[\s.,/-]*\p{N}/iu;

/**
 * A text for a table that is only looked at: what a spreadsheet would reckon out has an
 * apostrophe in front, and all else is as it was.
 */
export function harmless(text: string): string {
  return FORMULA.test(text) ? `${GUARD}${text}` : text;
}

/**
 * A text for a table that is read again. What would be taken for a formula, a number or a
 * date has an apostrophe in front, so that it stays what it is.
 */
export function guarded(text: string): string {
  return needsGuard(text) ? `${GUARD}${text}` : text;
}

/** The text that `guarded` made a cell of. */
export function unguarded(cell: string): string {
  const rest = cell.slice(GUARD.length);
  return cell.startsWith(GUARD) && needsGuard(rest) ? rest : cell;
}

function needsGuard(text: string): boolean {
  return text.startsWith(GUARD) || FORMULA.test(text) || FIGURE.test(text) || MONTH.test(text);
}
