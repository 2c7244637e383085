import { oneLine } from '../../drawing/measure-text.js';
import { printSize } from '../../length/print-length.js';
import type { PlanFile } from '../../plan-file/plan-file.js';
import { counted } from '../../report/counted.js';
import { timesUsed } from '../../report/plan-report.js';
import type { Block, Planned, Section } from '../job-sheet.js';
import { priceText, ruleOf } from './figures.js';

/** What to buy, and what it costs. */
export function buy({ file }: Planned): Section {
  return { id: 'buy', title: 'Buy', onNewPage: false, blocks: blocks(file) };
}

function blocks(file: PlanFile): readonly Block[] {
  if (file.buy.length === 0) {
    return [{ kind: 'words', text: 'Nothing: the shop has all that is needed.' }];
  }
  const lines = purchases(file);
  return [
    {
      kind: 'table',
      columns: [
        { heading: 'Count', align: 'right' },
        { heading: 'Sheet', align: 'left' },
        { heading: 'Size', align: 'left' },
        { heading: 'Price', align: 'right' },
        { heading: 'Cost', align: 'right' },
      ],
      rows: [
        ...lines.map(({ count, stock, size, price, cost }) => [
          `${count}`,
          stock,
          size,
          price,
          cost,
        ]),
        [
          `${lines.reduce((sum, { count }) => sum + count, 0)}`,
          'Total',
          '',
          '',
          priceText(file.parts.bought, file),
        ],
      ],
      sums: 1,
    },
    {
      kind: 'steps',
      steps: lines.map(({ count, stock, size, packs }, index) => ({
        id: `buy-${index + 1}`,
        text: `Buy ${count} of ${oneLine(stock)}`,
        detail: [size, ...packs].join('; '),
      })),
    },
  ];
}

function purchases(file: PlanFile) {
  return file.buy.map(({ stock, count, cost }) => {
    const sheet = file.stock.find(({ id }) => id === stock);
    return {
      count,
      stock,
      size: sheet === undefined ? '' : printSize(sheet.length, sheet.width, ruleOf(file)),
      price: sheet?.kind === 'sheet' ? priceText(sheet.price, file) : '',
      cost: priceText(cost, file),
      packs: packsText(file, stock, count),
    };
  });
}

/** Sheets that come in packs, and how many of them are left over. */
function packsText(file: PlanFile, stock: string, count: number): readonly string[] {
  const sheet = file.stock.find(({ id }) => id === stock);
  if (sheet?.kind !== 'sheet' || (sheet.packSize ?? 1) === 1) return [];
  const { packSize = 1, onHand } = sheet;
  const left = onHand + count - Math.max(onHand, timesUsed(file, stock));
  const rest = left === 0 ? 'none' : `${left}`;
  return [`${counted(count / packSize, 'pack')} of ${packSize}, ${rest} left over`];
}
