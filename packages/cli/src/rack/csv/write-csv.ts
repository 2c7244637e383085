import { printExactDecimal, printExactly, unitsAsTyped } from '../../length/print-exact.js';
import type { ShopUnits } from '../../length/unit.js';
import { type Coins, printMoney } from '../../money.js';
import { guarded } from '../../spreadsheet/cell-guard.js';
import { writeTable } from '../../spreadsheet/write-table.js';
import type { RackStock } from '../rack.js';
import { dayOf } from '../stock-words.js';
import { COLUMNS, type ColumnName } from './columns.js';

/** How a spreadsheet wants its tables. */
export interface CsvStyle {
  /** Of lengths, which are written exactly and with their unit. */
  readonly units: ShopUnits;
  /** Semicolons between cells, and commas in decimals, as many languages write them. */
  readonly semicolons: boolean;
}

/**
 * Things on the rack as CSV (RFC 4180), a heading line first. Reading it into the same
 * rack changes nothing.
 */
export function writeRackCsv(stock: readonly RackStock[], style: CsvStyle): string {
  const rows = stock.map((one) => {
    const cells = cellsOf(one, style);
    return COLUMNS.map((column) => cells[column]);
  });
  return writeTable([COLUMNS, ...rows], style.semicolons ? ';' : ',');
}

function cellsOf(stock: RackStock, style: CsvStyle): Readonly<Record<ColumnName, string>> {
  const number = (text: string) => (style.semicolons ? text.replace('.', ',') : text);
  const typed = unitsAsTyped([stock.length, stock.width], style.units);
  const side = (millimetres: number) => `${number(printExactly(millimetres, typed))} ${typed}`;
  const { thickness, bookValue } = stock;
  return {
    mark: markCell(stock.mark),
    kind: stock.kind,
    name: guarded(stock.name),
    length: side(stock.length),
    width: side(stock.width),
    metal: stock.metal,
    thickness:
      thickness === undefined
        ? ''
        : `${number(printExactDecimal(thickness, style.units))} ${style.units}`,
    rolled: stock.rolled ?? '',
    place: guarded(stock.place),
    from: guarded(stock.origin),
    value: bookValue === undefined ? '' : number(amount(bookValue)),
    since: dayOf(stock.addedAt),
    promised: `${stock.promised}`,
    count: `${stock.count}`,
  };
}

const amount = (coins: Coins) => printMoney(coins, '');

/** Marks such as 3E7 and MAR4 would become a number and a date. */
function markCell(mark: string): string {
  return /\d/.test(mark) ? `'${mark}` : mark;
}
