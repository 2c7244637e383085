import { cuttingLists } from '../cutting-list/cutting-list.js';
import { listWords } from '../cutting-list/list-words.js';
import type { Rule } from '../length/print-length.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { planOnFile } from '../plan-file/plan-on-file.js';
import { csvText, figure } from './csv-text.js';

const HEADINGS = [
  ...['Layout', 'Stock', 'Cut so many', 'First cut', 'Last cut', 'Set the gauge', 'Gauge'],
  ...['Gauge mm', 'Times', 'Take, edge to the gauge', 'Falls off', 'Left in the hand'],
];

/** `cuts.csv`: the cutting lists, a row for each of their lines. */
export function cutsCsv(file: PlanFile): string {
  const rule: Rule = { units: file.order.units, mark: file.order.smallestMark };
  const rows = cuttingLists(planOnFile(file)).flatMap(({ layout, settings }) => {
    const planned = file.layouts[layout - 1];
    if (planned === undefined) return [];
    const { stock, count } = planned;
    const words = listWords(rule, stock.kind);
    return settings.flatMap(({ gauge, lines }) =>
      lines.map((line, index) => [
        figure(layout),
        stock.id,
        figure(count),
        figure(line.cuts.from),
        figure(line.cuts.to),
        index === 0 ? 'yes' : 'no',
        words.gauge(gauge),
        figure(gauge),
        words.times(line),
        words.takes(line),
        words.falls(line),
        words.rest(line),
      ]),
    );
  });
  return csvText(HEADINGS, rows);
}
