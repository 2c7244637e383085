import { printExact } from '../quote/exact.js';
import type { MetalLine, Quote } from '../quote/quote.js';
import { WORK_WORDS } from '../quote/work-words.js';
import { type Cell, csvText, figure, moneyFigure } from './csv-text.js';

const HEADINGS = [
  ...['Part', 'No', 'Name', 'Quantity', 'Area sq mm', 'Weight g', 'Minutes each', 'Metal'],
  ...['Work', 'Margin', 'Price', 'Price each'],
];

/**
 * `quote.csv`: where the metal comes from and goes, the work, and a row for each blank;
 * the last row has their sums. Money stands in whole and hundredth parts of the currency.
 */
export function quoteCsv(quote: Quote): string {
  const metal = ({ what, area, weight, money }: MetalLine): readonly Cell[] => [
    ...['Metal', '', what, ''],
    figure(area, 0),
    weight === undefined ? '' : figure(weight, 1),
    '',
    money === undefined ? '' : moneyFigure(money),
    ...['', '', '', ''],
  ];
  const rows: readonly (readonly Cell[])[] = [
    ...[...quote.metal.from, ...quote.metal.to].map(metal),
    ...quote.work.map(({ work, count, minutes, money }): readonly Cell[] => [
      ...['Work', '', WORK_WORDS[work]],
      figure(count),
      ...['', ''],
      { figure: printExact(minutes, 6) },
      '',
      moneyFigure(money),
      ...['', '', ''],
    ]),
    ...quote.blanks.map(
      ({ number, name, quantity, metal: own, work, margin, price, each }): readonly Cell[] => [
        'Blank',
        figure(number),
        name,
        figure(quantity),
        ...['', '', ''],
        ...[own, work, margin, price].map(moneyFigure),
        each === undefined ? '' : moneyFigure(each),
      ],
    ),
    [
      ...['Total', '', '', '', '', '', ''],
      ...[quote.metalCost, quote.workCost, quote.margin, quote.price].map(moneyFigure),
      '',
    ],
  ];
  return csvText(HEADINGS, rows);
}
