import { printArea, printWeight } from '../booking/print-weight.js';
import type { Block, Planned, Section, Table } from '../job-sheet/job-sheet.js';
import { printMoney } from '../money.js';
import { printExact } from './exact.js';
import { type MetalLine, type Quote, quoteOf } from './quote.js';
import { WORK_WORDS } from './work-words.js';

const SPREAD =
  'Metal is shared out by the area of the pieces, bends, notches and seams by their numbers, ' +
  'cuts by the number of pieces, the margin by what all this costs. Each line is rounded once, ' +
  'half a coin up; totals are the sums of the lines. The price of one is the price of all over ' +
  'their number, rounded.';

/** The quote: what the metal comes to and where it goes, the work, and the price of each blank. */
export function quoteSections(planned: Planned): readonly Section[] {
  const quote = quoteOf(planned);
  const { currency } = planned.file.order;
  const money = (coins: number) =>
    coins < 0 ? `-${printMoney(-coins, currency)}` : printMoney(coins, currency);
  const blocks: readonly Block[] = [
    metalTable(quote, planned, money),
    ...(quote.work.length === 0 ? [] : [workTable(quote, money)]),
    priceTable(quote, money),
    blanksTable(quote, money),
    { kind: 'words', text: SPREAD },
  ];
  return [{ id: 'quote', title: 'Quote', onNewPage: true, blocks }];
}

type Money = (coins: number) => string;

function metalTable({ metal }: Quote, { file }: Planned, money: Money): Table {
  const { units } = file.order;
  const kept = file.parts.kept;
  const row = (sign: string) => (line: MetalLine) => [
    `${sign}${line.what}`,
    printArea(line.area, units),
    line.weight === undefined ? 'not known' : printWeight(line.weight, units),
    line.money === undefined ? '' : money(line.money),
  ];
  return {
    kind: 'table',
    caption: 'Metal: where it comes from, and where it goes',
    columns: [
      { heading: 'Metal', align: 'left' },
      { heading: 'Area', align: 'right' },
      { heading: 'Weight', align: 'right' },
      { heading: 'Money', align: 'right' },
    ],
    rows: [
      ...metal.from.map(row('')),
      ...metal.to.map(row('')),
      [
        'Less the worth of what is kept',
        '',
        '',
        kept === 0 ? money(0) : money(-Math.round(kept * 100)),
      ],
      ['Metal to charge', '', '', money(Math.round(file.cost * 100))],
    ],
    sums: 1,
  };
}

function workTable({ work, workCost }: Quote, money: Money): Table {
  return {
    kind: 'table',
    caption: 'Work',
    columns: [
      { heading: 'Work', align: 'left' },
      { heading: 'Count', align: 'right' },
      { heading: 'Minutes each', align: 'right' },
      { heading: 'Money', align: 'right' },
    ],
    rows: [
      ...work.map((line) => [
        WORK_WORDS[line.work],
        `${line.count}`,
        printExact(line.minutes),
        money(line.money),
      ]),
      ['Work in all', '', '', money(workCost)],
    ],
    sums: 1,
  };
}

function priceTable(quote: Quote, money: Money): Table {
  const { metalCost, work, workCost, marginPercent, margin, price } = quote;
  return {
    kind: 'table',
    caption: 'Price of the order',
    columns: [
      { heading: 'Part', align: 'left' },
      { heading: 'Money', align: 'right' },
    ],
    rows: [
      ['Metal', money(metalCost)],
      ...(work.length === 0 ? [] : [['Work', money(workCost)]]),
      ...(marginPercent === undefined
        ? []
        : [[`Margin, ${printExact(marginPercent)} % of the above`, money(margin)]]),
      ['Price', money(price)],
    ],
    sums: 1,
  };
}

function blanksTable({ blanks, metalCost, workCost, margin, price }: Quote, money: Money): Table {
  const pieces = blanks.reduce((sum, { quantity }) => sum + quantity, 0);
  return {
    kind: 'table',
    caption: 'Price of each blank',
    columns: [
      { heading: 'No', align: 'right' },
      { heading: 'Blank', align: 'left' },
      { heading: 'Quantity', align: 'right' },
      { heading: 'Metal', align: 'right' },
      { heading: 'Work', align: 'right' },
      { heading: 'Margin', align: 'right' },
      { heading: 'Price', align: 'right' },
      { heading: 'One', align: 'right' },
    ],
    rows: [
      ...blanks.map((line) => [
        `${line.number}`,
        line.name,
        `${line.quantity}`,
        ...[line.metal, line.work, line.margin, line.price].map(money),
        line.each === undefined ? '' : money(line.each),
      ]),
      ['', 'All', `${pieces}`, ...[metalCost, workCost, margin, price].map(money), ''],
    ],
    sums: 1,
  };
}
