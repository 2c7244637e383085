import type { Stock } from '@stripwright/nesting';
import type { Fault, FieldPath } from '../faults/fault.js';
import { printLength } from '../length/print-length.js';
import { ticksToMillimetres } from '../length/ticks.js';
import { printMoney } from '../money.js';
import { rackWorth } from './keep-rule.js';
import { orderToProblem } from './order-to-problem.js';
import type { SizedOrder } from './strips.js';

/**
 * Fields of stock and shear that are good each by itself and contradict each
 * other: packs, the trim of edges, and what offcuts are worth. In marks, as the
 * planner will see them.
 */
export function stockFaults(sized: SizedOrder): readonly Fault[] {
  const { stock, shear } = orderToProblem(sized);
  const { rule } = sized.order.shop;
  const long = (ticks: number) => printLength(ticksToMillimetres(ticks, rule.mark), rule);
  const { kerf = 0, trim = 0 } = shear;
  const faults: Fault[] = [];
  const wrong = (path: FieldPath, expected: string) =>
    faults.push({ complaint: { code: 'disagrees', expected }, path });
  if (trim > 0 && kerf > trim) {
    wrong(['shop', 'shear', 'kerf'], `at most the edge trim of ${long(trim)}, in which it runs`);
  }
  const sheets = stock.filter((entry) => entry.kind === 'sheet');
  const small = sheets.find(({ length, width }) => Math.min(length, width) <= 2 * trim);
  if (small !== undefined) {
    const side = long(Math.min(small.length, small.width));
    wrong(['shop', 'shear', 'edge trim'], `less than half of ${side}, the width of "${small.id}"`);
  }
  sheets.forEach(({ canBuy, packSize = 1 }, index) => {
    if (canBuy === 'any' || canBuy % packSize === 0) return;
    wrong(['sheets', index, 'can buy'], `a multiple of ${packSize}, the sheets in a pack`);
  });
  return [...faults, ...worthFaults(sized, stock), ...thicknessFaults(sized)];
}

/** Stock that tells its thickness cannot be compared with cutters that do not. */
function thicknessFaults({ order }: SizedOrder): readonly Fault[] {
  if (order.shop.thickness !== undefined) return [];
  const stock = [...order.sheets, ...order.offcuts];
  if (stock.every(({ own }) => own?.thickness === undefined)) return [];
  const hint = 'the thickness that cutters are made of, since stock tells its own';
  return [{ complaint: { code: 'missing', hint }, path: ['shop', 'thickness'] }];
}

/** A shop would gain by cutting up sheets that are worth more on the rack than they cost. */
function worthFaults({ order, blanks }: SizedOrder, stock: readonly Stock[]): readonly Fault[] {
  const { keep: [rule] = [] } = orderToProblem({ order, blanks });
  if (rule === undefined) return [];
  const money = (coins: number) => printMoney(coins, order.shop.currency);
  return stock.flatMap((entry, index): readonly Fault[] => {
    const { id, kind, bookValue } = entry;
    if (entry.metal !== rule.metal || entry.thickness !== rule.thickness) return [];
    const worth = rackWorth(entry.length, entry.width, rule);
    if (kind === 'sheet' && entry.canBuy !== 0 && worth > entry.price) {
      const expected = `so little that a whole "${id}" is worth its price of ${money(entry.price)} at most, not ${money(worth)}`;
      return [{ complaint: { code: 'disagrees', expected }, path: ['shop', 'offcuts worth'] }];
    }
    if (bookValue === undefined || bookValue >= worth) return [];
    const at = kind === 'sheet' ? ['sheets', index] : ['offcuts', index - order.sheets.length];
    const expected = `at least ${money(worth)}, what a whole one is worth as an offcut`;
    return [{ complaint: { code: 'disagrees', expected }, path: [...at, 'book value'] }];
  });
}
