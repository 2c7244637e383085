import { printSize, type Rule } from '../length/print-length.js';
import type { PlanFile, PlanFileStock } from '../plan-file/plan-file.js';
import { idOnRack } from '../rack-stock/id-on-rack.js';
import { counted } from './counted.js';
import { rackTable } from './rack-table.js';
import { wrap } from './table.js';

/** One thing to fetch before cutting. */
export interface FromRack {
  readonly stock: PlanFileStock;
  readonly mark: string;
  readonly count: number;
}

/** What a plan takes from the rack: sheets that are there are used before any are bought. */
export function takenFromRack({ stock, layouts }: PlanFile): readonly FromRack[] {
  return stock.flatMap((entry) => {
    if (entry.mark === undefined) return [];
    const cut = layouts.filter((layout) => layout.stock.id === entry.id);
    const used = cut.reduce((sum, { count }) => sum + count, 0);
    const count = entry.kind === 'offcut' ? used : Math.min(used, entry.onHand);
    return count === 0 ? [] : [{ stock: entry, mark: entry.mark, count }];
  });
}

/** What to take from the rack and how much of it was considered; nothing for a plan without one. */
export function rackReport(file: PlanFile): readonly string[] {
  if (file.rack === undefined) return [];
  return [...toTake(file), ...wrap(`  ${whatWasConsidered(file)}`, '  '), ...unsure(file)];
}

function toTake(file: PlanFile): readonly string[] {
  const rule: Rule = { units: file.order.units, mark: file.order.smallestMark };
  const taken = takenFromRack(file);
  if (taken.length === 0) return ['Take from the rack: nothing'];
  return [
    'Take from the rack',
    ...rackTable(
      taken.map(({ stock: { length, width, place = '' }, mark, count }) => ({
        count,
        mark,
        size: printSize(Math.max(length, width), Math.min(length, width), rule),
        place,
      })),
    ),
  ];
}

function whatWasConsidered({ rack, stock }: PlanFile): string {
  if (rack === undefined || rack.fitting === 0) return 'No other offcut on the rack fits.';
  const { fitting, considered } = rack;
  const sheets = stock.some(
    ({ kind, id, mark }) => kind === 'sheet' && mark !== undefined && id === idOnRack(mark),
  );
  const things = sheets
    ? 'offcuts and sizes of sheet'
    : counted(fitting, 'offcut').slice(`${fitting} `.length);
  const all = `${considered} of ${fitting} ${things} on the rack that ${fitting === 1 ? 'fits' : 'fit'} ${considered === 1 ? 'was' : 'were'} considered`;
  return considered < fitting ? `${all}; the bound holds for those.` : `${all}.`;
}

/** Metal that would do if somebody had told how thick it is. */
function unsure({ rack, order }: PlanFile): readonly string[] {
  const passed = rack?.unsureThickness ?? 0;
  if (passed === 0) return [];
  const were = passed === 1 ? '1 more that fits was' : `${passed} more that fit were`;
  const its = passed === 1 ? 'its thickness is' : 'their thickness is';
  const why =
    order.metal?.thickness === undefined
      ? `${its} told and the order tells none: give the thickness under shop`
      : `${its} not told: measure it and give it by "stripwright rack correct"`;
  return wrap(`  ${were} passed over, since ${why}.`, '  ');
}
