import type { Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { BEND_COLUMNS, bendRows, CURVE_COLUMNS, type CurveWords, curveRows } from './mark-rows.js';
import { table, wrap } from './table.js';

const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** Where to bend, which way and how far. */
export function bendTable(strip: PlanFileStrip, rule: Rule): readonly string[] {
  if (strip.bends.length === 0) return ['No sharp bends.'];
  return [
    ...wrap(
      `Bends: each mark runs from the square end, in ${UNIT_NAMES[rule.units]}. "in" folds toward ` +
        'the inside of the cutter. Degrees are those bent through: 90 is square. Bend to the ' +
        'angle under "fold to", by which the ends meet on these marks.',
    ),
    ...table(BEND_COLUMNS, bendRows(strip, rule)),
  ];
}

const OPENS = ' "+" is a curve that opens from its tightest radius; form it to the drawing.';

const REPORT_CURVES: CurveWords = {
  name: (number) => `${number}`,
  radius: (tightest, opens) => `${tightest}${opens ? '+' : ' '}`,
};

/** Where to form, round what radius and how far. */
export function curveTable(strip: PlanFileStrip, rule: Rule): readonly string[] {
  if (strip.curves.length === 0) return [];
  const opens = strip.curves.some(({ even }) => even === false);
  return [
    '',
    ...wrap(
      `Curves: formed between the marks, in ${UNIT_NAMES[rule.units]}, each half through its ` +
        `degrees.${opens ? OPENS : ''}`,
    ),
    ...table(CURVE_COLUMNS, curveRows(strip, rule, REPORT_CURVES)),
  ];
}
