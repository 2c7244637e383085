import { printBareLength, type Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { table, wrap } from './table.js';

const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** Where to bend, which way and how far. */
export function bendTable({ bends }: PlanFileStrip, rule: Rule): readonly string[] {
  if (bends.length === 0) return ['No sharp bends.'];
  return [
    ...wrap(
      `Bends: each mark runs from the square end, in ${UNIT_NAMES[rule.units]}. "in" folds toward ` +
        'the inside of the cutter. Degrees are those bent through: 90 is square. Bend to the ' +
        'angle under "fold to", by which the ends meet on these marks.',
    ),
    ...table(
      [
        { heading: 'Bend', align: 'right' },
        { heading: 'Mark', align: 'right' },
        { heading: 'Fold', align: 'left' },
        { heading: 'Drawn', align: 'right' },
        { heading: 'Fold to', align: 'right' },
      ],
      bends.map(({ number, at, direction, angle, foldTo }) => [
        `${number}`,
        printBareLength(at, rule),
        direction,
        angle.toFixed(1),
        (foldTo ?? angle).toFixed(1),
      ]),
    ),
  ];
}

const OPENS = ' "+" is a curve that opens from its tightest radius; form it to the drawing.';

/** Where to form, round what radius and how far. */
export function curveTable({ curves }: PlanFileStrip, rule: Rule): readonly string[] {
  if (curves.length === 0) return [];
  const opens = curves.some(({ even }) => even === false);
  return [
    '',
    ...wrap(
      `Curves: formed between the marks, in ${UNIT_NAMES[rule.units]}, each half through its ` +
        `degrees.${opens ? OPENS : ''}`,
    ),
    ...table(
      [
        { heading: 'Curve', align: 'right' },
        { heading: 'From', align: 'right' },
        { heading: 'To', align: 'right' },
        { heading: 'Radius', align: 'right' },
        { heading: 'Form', align: 'left' },
        { heading: 'Drawn', align: 'right' },
        { heading: 'Halves', align: 'right' },
      ],
      curves.map(({ from, to, radius, direction, angle, even, formTo }, index) => [
        `${index + 1}`,
        printBareLength(from, rule),
        printBareLength(to, rule),
        `${printBareLength(Math.round(radius / rule.mark) * rule.mark, rule)}${even === false ? '+' : ' '}`,
        direction,
        angle.toFixed(1),
        (formTo ?? [angle / 2, angle / 2]).map((half) => half.toFixed(1)).join(' + '),
      ]),
    ),
  ];
}
