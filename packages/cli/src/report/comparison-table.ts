import type { Comparison } from '../commands/rule-comparison.js';
import { choiceText } from '../faults/fault-text.js';
import { inUnits } from '../length/in-units.js';
import type { Rule } from '../length/print-length.js';
import { MILLIMETRES } from '../length/unit.js';
import { table, wrap } from './table.js';

/** Finer than any rule: the differences are small. */
const DECIMALS: Readonly<Record<Rule['units'], number>> = { in: 4, mm: 2 };
const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** How long the strip is by each bend rule, before it is rounded up to a mark. */
export function comparisonTable(
  { rules, lacking }: Comparison,
  { units }: Rule,
): readonly string[] {
  const figure = (length: number) => (length / MILLIMETRES[units]).toFixed(DECIMALS[units]);
  const signed = (length: number) => `${length < 0 ? '' : '+'}${figure(length)}`;
  return [
    `Length of the strip by each bend rule, in ${UNIT_NAMES[units]}, not rounded:`,
    ...table(
      [
        { heading: 'Bend rule', align: 'left' },
        { heading: 'Length', align: 'right' },
        { heading: 'Difference', align: 'right' },
      ],
      rules.map(({ rule, length, difference = 0 }, index) => [
        rule,
        length === undefined ? 'none' : figure(length),
        length === undefined ? '' : index === 0 ? 'in use' : signed(difference),
      ]),
    ),
    ...rules.flatMap(({ rule, reason }) =>
      reason === undefined ? [] : wrap(`  ${rule}: ${inUnits(reason, units)}`, '    '),
    ),
    ...lacking.flatMap(({ rule, options }) =>
      wrap(`  Not compared: ${rule}, which needs ${choiceText(options, 'and')}`, '    '),
    ),
  ];
}
