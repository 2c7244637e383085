import { stringify } from 'csv-stringify/sync';
import type { Separator } from './separator.js';

/**
 * Rows of cells as RFC 4180 has them: lines end with CR LF, cells with separators, quotes or
 * line breaks are quoted. Cells are written as they are; see cell-guard.ts for those that a
 * spreadsheet would take for something else.
 */
export function writeTable(
  rows: readonly (readonly string[])[],
  separator: Separator = ',',
): string {
  return stringify(
    rows.map((row) => [...row]),
    {
      delimiter: separator,
      record_delimiter: '\r\n',
      // One half of CR LF alone ends a line for many readers.
      quoted_match: /[\r\n]/u,
    },
  );
}
