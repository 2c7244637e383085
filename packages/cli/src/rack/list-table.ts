import type { ShopUnits } from '../length/unit.js';
import { printMoney } from '../money.js';
import { counted } from '../report/counted.js';
import { type Column, REPORT_WIDTH, shorten, table } from '../report/table.js';
import { byMetal } from './by-metal.js';
import type { RackStock } from './rack.js';
import { bareSize, dayOf, metalHeading, UNIT_WORDS } from './stock-words.js';

interface Told extends Column {
  /** True if it is left out where it has nothing to say. */
  readonly spared?: true;
  readonly cell: (stock: RackStock, units: ShopUnits) => string;
}

const MARK: Told = { heading: 'Mark', align: 'left', cell: ({ mark }) => mark };
const SIZE: Told = { heading: 'Size', align: 'left', cell: bareSize };
const ROLLED: Told = {
  heading: 'Rolled',
  align: 'left',
  spared: true,
  cell: ({ rolled }) => rolled ?? '',
};
const PLACE: Told = {
  heading: 'Place',
  align: 'left',
  shrinks: true,
  spared: true,
  cell: ({ place }) => place,
};
const SINCE: Told = { heading: 'Since', align: 'left', cell: ({ addedAt }) => dayOf(addedAt) };
const WORTH: Told = {
  heading: 'Worth',
  align: 'right',
  spared: true,
  cell: ({ bookValue }) => (bookValue === undefined ? '' : printMoney(bookValue, '')),
};
const PROMISED: Told = { heading: 'Promised', align: 'right', spared: true, cell: promisedWords };

const OFFCUT_COLUMNS = [MARK, SIZE, ROLLED, PLACE, SINCE, WORTH, PROMISED];
const SHEET_COLUMNS: readonly Told[] = [
  MARK,
  { heading: 'Count', align: 'right', cell: ({ count }) => `${count}` },
  SIZE,
  { heading: 'Name', align: 'left', shrinks: true, cell: ({ name }) => name },
  ROLLED,
  PLACE,
  WORTH,
  PROMISED,
];

/** What lies on a rack, metal by metal, in tables of at most 80 columns. */
export function listTables(stock: readonly RackStock[], units: ShopUnits): readonly string[] {
  const lines = byMetal(stock).flatMap((group) => {
    const offcuts = group.stock.filter(({ kind }) => kind === 'offcut');
    const sheets = group.stock.filter(({ kind }) => kind === 'sheets');
    const metal = metalHeading(group, units);
    return [
      ...kindTable(`${metal}: offcuts, in ${UNIT_WORDS[units]}`, OFFCUT_COLUMNS, offcuts, units),
      ...kindTable(`${metal}: whole sheets, in ${UNIT_WORDS[units]}`, SHEET_COLUMNS, sheets, units),
    ];
  });
  return [...lines, countWords(stock)];
}

function kindTable(
  heading: string,
  columns: readonly Told[],
  stock: readonly RackStock[],
  units: ShopUnits,
): readonly string[] {
  if (stock.length === 0) return [];
  const filled = columns
    .map((column) => ({ column, cells: stock.map((one) => column.cell(one, units)) }))
    .filter(({ column, cells }) => column.spared !== true || cells.some((cell) => cell !== ''));
  const rows = stock.map((_, index) => filled.map(({ cells }) => cells[index] ?? ''));
  const told = filled.map(({ column }) => column);
  return [shorten(heading, REPORT_WIDTH), ...table(told, rows), ''];
}

function promisedWords({ kind, count, promised }: RackStock): string {
  if (count === 0) return 'gone';
  if (promised === 0) return '';
  return kind === 'offcut' ? 'yes' : `${promised}`;
}

/** `12 offcuts and 30 whole sheets` */
function countWords(stock: readonly RackStock[]): string {
  const there = stock.filter(({ count }) => count > 0);
  const offcuts = there.filter(({ kind }) => kind === 'offcut').length;
  const sheets = there.reduce((sum, { kind, count }) => sum + (kind === 'sheets' ? count : 0), 0);
  const words = [
    ...(offcuts > 0 ? [counted(offcuts, 'offcut')] : []),
    ...(sheets > 0 ? [counted(sheets, 'whole sheet')] : []),
  ];
  return words.length === 0 ? 'Nothing lies there.' : `${words.join(' and ')}.`;
}
