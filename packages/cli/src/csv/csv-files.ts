import type { Planned } from '../job-sheet/job-sheet.js';
import { quoteOf } from '../quote/quote.js';
import { cutsCsv } from './cuts-csv.js';
import { piecesCsv } from './pieces-csv.js';
import { purchasesCsv } from './purchases-csv.js';
import { quoteCsv } from './quote-csv.js';

/** The names of the packet's tables for spreadsheets. */
export const CSV_NAMES = ['cuts.csv', 'pieces.csv', 'purchases.csv', 'quote.csv'] as const;

/** The packet's tables for spreadsheets, by their names. */
export function csvFiles(
  planned: Planned,
): readonly { readonly name: (typeof CSV_NAMES)[number]; readonly text: string }[] {
  const { file } = planned;
  return [
    { name: 'cuts.csv', text: cutsCsv(file) },
    { name: 'pieces.csv', text: piecesCsv(file) },
    { name: 'purchases.csv', text: purchasesCsv(file) },
    { name: 'quote.csv', text: quoteCsv(quoteOf(planned)) },
  ];
}
