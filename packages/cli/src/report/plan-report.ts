import { printBareLength, printLength, printSize, type Rule } from '../length/print-length.js';
import { coinsOf, printMoney } from '../money.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { CUTTING_CAUTIONS } from './cautions.js';
import { counted } from './counted.js';
import { rackReport } from './rack-report.js';
import { table, wrap } from './table.js';
import { warningLines } from './warning-lines.js';

/** The report of a plan: what to buy, how to cut it, what to cut. Lines of at most 80 columns. */
export function planReport(file: PlanFile): readonly string[] {
  return [
    ...summary(file),
    '',
    ...purchases(file),
    '',
    ...section(rackReport(file)),
    ...strips(file),
    '',
    ...layouts(file),
    '',
    ...offcutsToKeep(file),
    '',
    ...warnings(file),
    ...CUTTING_CAUTIONS,
  ];
}

/** Lines and a blank one after them; nothing where there are none. */
const section = (lines: readonly string[]) => (lines.length === 0 ? [] : [...lines, '']);

const ruleOf = ({ order }: PlanFile): Rule => ({ units: order.units, mark: order.smallestMark });

const total = <Entry>(entries: readonly Entry[], of: (entry: Entry) => number): number =>
  entries.reduce((sum, entry) => sum + of(entry), 0);

function money(amount: number, { order }: PlanFile): string {
  return printMoney(coinsOf(amount) ?? Math.round(amount * 100), order.currency);
}

function summary(file: PlanFile): readonly string[] {
  const pieces = total(file.blanks, ({ quantity }) => quantity);
  return [
    ...wrap(file.order.name),
    `${counted(pieces, 'piece')} of ${counted(file.blanks.length, 'kind')}, ` +
      `to marks of ${printLength(file.order.smallestMark, ruleOf(file))}`,
  ];
}

function purchases(file: PlanFile): readonly string[] {
  const rows = file.buy.map(({ stock, count, cost }) => {
    const sheet = file.stock.find(({ id }) => id === stock);
    const size = sheet === undefined ? '' : printSize(sheet.length, sheet.width, ruleOf(file));
    const price = sheet?.kind === 'sheet' ? `at ${money(sheet.price, file)}` : '';
    return [`${count}`, stock, size, price, money(cost, file)];
  });
  const { bought, fromShop, kept } = file.parts;
  rows.push(['', 'Total', '', '', money(bought, file)]);
  if (fromShop > 0) rows.push(['', 'Used from the shop', '', '', money(fromShop, file)]);
  if (kept > 0) rows.push(['', 'Less what is kept', '', '', `-${money(kept, file)}`]);
  if (fromShop > 0 || kept > 0) rows.push(['', 'Cost', '', '', money(file.cost, file)]);
  return [
    ...(file.buy.length === 0 ? ['Buy nothing: the shop has all that is needed.'] : ['Buy']),
    ...table(
      [
        { heading: 'Count', align: 'right' },
        { heading: 'Sheet', align: 'left', shrinks: true },
        { heading: 'Size', align: 'left' },
        { heading: 'Price', align: 'right' },
        { heading: 'Cost', align: 'right' },
      ],
      rows,
    ),
    ...wrap(`  Bound: ${boundText(file)}`, '  '),
    ...packs(file),
    ...wrap(`  From the shop: ${shopStock(file)}`, '  '),
  ];
}

/** Sheets that come in packs, and how many of them are left over. */
function packs(file: PlanFile): readonly string[] {
  return file.buy.flatMap(({ stock, count }) => {
    const sheet = file.stock.find(({ id }) => id === stock);
    if (sheet?.kind !== 'sheet' || (sheet.packSize ?? 1) === 1) return [];
    const { packSize = 1, onHand } = sheet;
    const left = onHand + count - Math.max(onHand, timesUsed(file, stock));
    const packsWord = counted(count / packSize, 'pack');
    const rest = left === 0 ? 'none' : `${left}`;
    return wrap(`  Packs: ${stock} in ${packsWord} of ${packSize}, ${rest} left over`, '  ');
  });
}

/** How many of a stock are cut. */
export function timesUsed({ layouts }: PlanFile, id: string): number {
  const own = layouts.filter(({ stock }) => stock.id === id);
  return total(own, ({ count }) => count);
}

/** How good the plan is, in a few words. */
export function boundText(file: PlanFile): string {
  const { cost, proven } = file.bound;
  if (proven) return 'nothing cheaper exists (proven)';
  const gap = (coinsOf(file.cost) ?? 0) - (coinsOf(cost) ?? 0);
  const above = printMoney(gap, file.order.currency);
  const gapText = `at most ${above} above the least possible ${money(cost, file)}`;
  const { ending } = file.effort;
  return ending === 'time limit' || ending === 'called off'
    ? `${gapText}; more time may close the gap`
    : gapText;
}

/** What is cut and not bought. */
function shopStock(file: PlanFile): string {
  const parts = file.stock.flatMap((stock) => {
    const used = timesUsed(file, stock.id);
    if (stock.kind === 'offcut')
      return used > 0 ? [stock.mark === undefined ? `offcut ${stock.id}` : stock.id] : [];
    const ours = Math.min(used, stock.onHand);
    return ours > 0 ? [`${ours} x ${stock.id}`] : [];
  });
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

function strips(file: PlanFile): readonly string[] {
  const rule = ruleOf(file);
  return [
    `Strips, in ${rule.units === 'in' ? 'inches' : 'millimetres'}`,
    ...table(
      [
        { heading: 'No', align: 'right' },
        { heading: 'Name', align: 'left', shrinks: true },
        { heading: 'Length', align: 'right' },
        { heading: 'Width', align: 'right' },
        { heading: 'Quantity', align: 'right' },
      ],
      file.blanks.map(({ id, length, width, quantity }, index) => [
        `${index + 1}`,
        id,
        printBareLength(length, rule),
        printBareLength(width, rule),
        `${quantity}`,
      ]),
    ),
    ...spares(file),
  ];
}

/** Copies beyond what is wanted; nothing where none are welcome. */
function spares(file: PlanFile): readonly string[] {
  if (file.blanks.every(({ spares = 0 }) => spares === 0)) return [];
  const parts = file.spares.map(({ blank, count }) => `${count} x ${blank}`);
  return wrap(`  Spares at no cost: ${parts.length === 0 ? 'none' : parts.join(', ')}`, '  ');
}

function layouts(file: PlanFile): readonly string[] {
  const rule = ruleOf(file);
  const stocks = total(file.layouts, ({ count }) => count);
  return [
    `Layouts: ${file.layouts.length} different, for ` +
      `${counted(stocks, 'sheet or offcut', 'sheets and offcuts')}`,
    ...table(
      [
        { heading: 'Map', align: 'right' },
        { heading: 'Stock', align: 'left', shrinks: true },
        { heading: 'Size', align: 'left' },
        { heading: 'Count', align: 'right' },
        { heading: 'Pieces on each', align: 'right' },
      ],
      file.layouts.map(({ stock, count, pieces }, index) => [
        `${index + 1}`,
        stock.kind === 'offcut' && !isOnRack(file, stock.id) ? `Offcut ${stock.id}` : stock.id,
        printSize(stock.length, stock.width, rule),
        `${count}`,
        `${pieces.length}`,
      ]),
    ),
    `  Metal used: ${(100 * shareUsed(file)).toFixed(1)} %`,
  ];
}

/** Such a stock is called by its mark, whatever its kind. */
function isOnRack({ stock }: PlanFile, id: string): boolean {
  return stock.some((entry) => entry.id === id && entry.mark !== undefined);
}

/** What to think of before cutting: the metal and food, and what is hard to make. */
function warnings(file: PlanFile): readonly string[] {
  const food = file.order.metal?.foodWarning;
  const hard = file.blanks.flatMap(({ id, strip }) =>
    warningLines(strip?.warnings ?? [], ruleOf(file), id),
  );
  return [
    ...(food === undefined ? [] : [...wrap(food), '']),
    ...(hard.length === 0 ? [] : ['Before cutting, think of this:', ...hard, '']),
  ];
}

/** Area of the pieces as a part of the area of the stock that is cut. */
export function shareUsed({ layouts }: PlanFile): number {
  const area = ({ length, width }: { readonly length: number; readonly width: number }) =>
    length * width;
  const stock = total(layouts, (layout) => layout.count * area(layout.stock));
  const pieces = total(layouts, (layout) => layout.count * total(layout.pieces, area));
  return stock === 0 ? 0 : pieces / stock;
}

function offcutsToKeep(file: PlanFile): readonly string[] {
  const kept = file.layouts.flatMap(({ count, remnants }, index) =>
    remnants.filter(({ keep }) => keep).map((remnant) => ({ ...remnant, count, map: index + 1 })),
  );
  if (kept.length === 0) return ['Offcuts to keep: none'];
  const isPriced = kept.some(({ value }) => value > 0);
  return [
    'Offcuts to keep',
    ...table(
      [
        { heading: 'Count', align: 'right' },
        { heading: 'Size', align: 'left' },
        { heading: 'From', align: 'left' },
        ...(isPriced ? [{ heading: 'Worth each', align: 'right' } as const] : []),
      ],
      kept.map(({ count, length, width, map, value }) => [
        `${count}`,
        printSize(Math.max(length, width), Math.min(length, width), ruleOf(file)),
        `map ${map}`,
        ...(isPriced ? [money(value, file)] : []),
      ]),
    ),
  ];
}
