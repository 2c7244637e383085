import { printLength, type Rule } from '../length/print-length.js';
import { coinsOf } from '../money.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { csvText, figure, moneyFigure } from './csv-text.js';

const HEADINGS = ['Sheet', 'Length', 'Width', 'Count', 'Price', 'Cost', 'Length mm', 'Width mm'];

/** `purchases.csv`: the sheets to buy. */
export function purchasesCsv({ order, stock, buy }: PlanFile): string {
  const rule: Rule = { units: order.units, mark: order.smallestMark };
  const coins = (amount: number) => coinsOf(amount) ?? Math.round(amount * 100);
  const rows = buy.flatMap(({ stock: id, count, cost }) => {
    const sheet = stock.find((entry) => entry.id === id);
    if (sheet?.kind !== 'sheet') return [];
    const { length, width, price } = sheet;
    return [
      [
        id,
        printLength(length, rule),
        printLength(width, rule),
        figure(count),
        moneyFigure(coins(price)),
        moneyFigure(coins(cost)),
        figure(length),
        figure(width),
      ],
    ];
  });
  return csvText(HEADINGS, rows);
}
