import { printThickness } from '../length/print-length.js';
import type { ShopUnits } from '../length/unit.js';
import { amountOf, type Coins, printMoney } from '../money.js';
import { WORTH_AREA } from '../order/keep-rule.js';
import { type Column, table } from '../report/table.js';
import type { ShopKeepRule } from './rack.js';
import { bareSize } from './stock-words.js';

const SQUARE_METRE = 1_000_000;
const AREA_WORDS: Readonly<Record<ShopUnits, string>> = { in: 'a sq ft', mm: 'a sq m' };

/** Which offcuts the shop keeps, metal by metal. */
export function keepTable(rules: readonly ShopKeepRule[], units: ShopUnits): readonly string[] {
  if (rules.length === 0) {
    return [
      'The rack has no rule yet; set one with --least and, if you like, --worth and --trouble.',
    ];
  }
  const columns: readonly Column[] = [
    { heading: 'Metal', align: 'left', shrinks: true },
    { heading: 'Thickness', align: 'left' },
    { heading: `Least (${units})`, align: 'left' },
    { heading: `Worth ${AREA_WORDS[units]}`, align: 'right' },
    { heading: 'Trouble of each', align: 'right' },
  ];
  const rows = rules.map((one) => [
    one.metal,
    one.thickness === undefined ? 'any' : printThickness(one.thickness, units),
    bareSize({ length: one.leastLength, width: one.leastWidth }, units),
    printMoney(worthOfArea(one.worth, units), ''),
    printMoney(one.trouble, ''),
  ]);
  return ['Offcuts worth keeping', ...table(columns, rows)];
}

/** Coins for a square metre, from those for a square foot or a square metre. */
export function worthOfSquareMetre(coins: Coins, units: ShopUnits): Coins {
  return Math.round((coins * SQUARE_METRE) / WORTH_AREA[units]);
}

function worthOfArea(coins: Coins, units: ShopUnits): Coins {
  return Math.round((coins * WORTH_AREA[units]) / SQUARE_METRE);
}

/** A rule as JSON: millimetres, and money as decimal numbers, the worth for a square metre. */
export function keepEntry({ worth, trouble, ...rule }: ShopKeepRule) {
  return { ...rule, worthOfSquareMetre: amountOf(worth), trouble: amountOf(trouble) };
}
