import { printWeight } from '../booking/print-weight.js';
import type { ShopUnits } from '../length/unit.js';
import { amountOf, printMoney } from '../money.js';
import { WORTH_AREA } from '../order/keep-rule.js';
import { counted } from '../report/counted.js';
import { type Column, table } from '../report/table.js';
import type { RackWorth } from './rack.js';

const AREA_NAMES: Readonly<Record<ShopUnits, string>> = { in: 'sq ft', mm: 'sq m' };
const DECIMALS = 2;

/** Sums over a rack in words. */
export function worthLines(worth: RackWorth, units: ShopUnits): readonly string[] {
  const area = (squareMillimetres: number) =>
    (squareMillimetres / WORTH_AREA[units]).toFixed(DECIMALS);
  const columns: readonly Column[] = [
    { heading: '', align: 'left' },
    { heading: 'Count', align: 'right' },
    { heading: capital(AREA_NAMES[units]), align: 'right' },
  ];
  const { offcuts, sheets, offcutArea, sheetArea, scrapArea, scrapGrams } = worth;
  const things = offcuts + sheets;
  return [
    'On the rack',
    ...table(columns, [
      ['Offcuts', `${offcuts}`, area(offcutArea)],
      ['Whole sheets', `${sheets}`, area(sheetArea)],
    ]),
    `  Worth in the books: ${printMoney(worth.value, '')}${unvaluedWords(worth, things)}`,
    '',
    'Scrap of all that was booked',
    `  ${area(scrapArea)} ${AREA_NAMES[units]}; ` +
      `${printWeight(scrapGrams, units)}, as far as thicknesses are known`,
  ];
}

function unvaluedWords({ unvalued }: RackWorth, things: number): string {
  if (unvalued === 0) return '';
  if (unvalued === things) return ', as nothing there has a value of its own';
  return `, without ${counted(unvalued, 'thing')} that ${unvalued === 1 ? 'has' : 'have'} no value of their own`;
}

/** The same as JSON: square millimetres, grams, and money as a decimal number. */
export function worthEntry(worth: RackWorth) {
  return { ...worth, value: amountOf(worth.value) };
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
