import { printLength, type Rule } from '../length/print-length.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { csvText, figure } from './csv-text.js';

const HEADINGS = [
  ...['Layout', 'Stock', 'Cut so many', 'No', 'Name', 'Length', 'Width', 'Turned'],
  ...['Length mm', 'Width mm', 'Left mm', 'Up mm'],
];

/** `pieces.csv`: every piece of every layout, where it lies on the stock. */
export function piecesCsv({ order, blanks, layouts }: PlanFile): string {
  const rule: Rule = { units: order.units, mark: order.smallestMark };
  const rows = layouts.flatMap(({ stock, count, pieces }, index) =>
    pieces.map(({ blank, x, y, length, width, turned }) => {
      const number = blanks.findIndex(({ id }) => id === blank) + 1;
      const [long, wide] = turned ? [width, length] : [length, width];
      return [
        figure(index + 1),
        stock.id,
        figure(count),
        figure(number),
        blank,
        printLength(long, rule),
        printLength(wide, rule),
        turned ? 'yes' : 'no',
        ...[long, wide, x, y].map((each) => figure(each)),
      ];
    }),
  );
  return csvText(HEADINGS, rows);
}
