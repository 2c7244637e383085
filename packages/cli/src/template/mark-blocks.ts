import type { Block, Table } from '../job-sheet/job-sheet.js';
import { printBareLength, type Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { curveName } from './running-marks.js';

const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** The tables of running marks: where to bend, which way and how far; where to form, and round what. */
export function markBlocks(strip: PlanFileStrip, rule: Rule): readonly Block[] {
  return [...bendBlocks(strip, rule), ...curveBlocks(strip, rule)];
}

function bendBlocks({ bends }: PlanFileStrip, rule: Rule): readonly Table[] {
  if (bends.length === 0) return [];
  return [
    {
      kind: 'table',
      caption:
        `Bends: marks from the square end, in ${UNIT_NAMES[rule.units]}; degrees bent through, ` +
        '90 is square. Bend to those under "fold to".',
      columns: [
        { heading: 'Bend', align: 'right' },
        { heading: 'Mark', align: 'right' },
        { heading: 'Fold', align: 'left' },
        { heading: 'Drawn', align: 'right' },
        { heading: 'Fold to', align: 'right' },
      ],
      rows: bends.map(({ number, at, direction, angle, foldTo }) => [
        `${number}`,
        printBareLength(at, rule),
        direction,
        angle.toFixed(1),
        (foldTo ?? angle).toFixed(1),
      ]),
    },
  ];
}

function curveBlocks({ curves }: PlanFileStrip, rule: Rule): readonly Table[] {
  if (curves.length === 0) return [];
  const opens = curves.some(({ even }) => even === false);
  return [
    {
      kind: 'table',
      caption:
        `Curves: formed between the marks, in ${UNIT_NAMES[rule.units]}, each half through its ` +
        `degrees.${opens ? ' "from" tells the tightest radius of a curve that opens.' : ''}`,
      columns: [
        { heading: 'Curve', align: 'left' },
        { heading: 'From', align: 'right' },
        { heading: 'To', align: 'right' },
        { heading: 'Radius', align: 'right' },
        { heading: 'Form', align: 'left' },
        { heading: 'Drawn', align: 'right' },
        { heading: 'Halves', align: 'right' },
      ],
      rows: curves.map(({ from, to, radius, direction, angle, even, formTo }, index) => [
        curveName(index + 1),
        printBareLength(from, rule),
        printBareLength(to, rule),
        `${even === false ? 'from ' : ''}${printBareLength(Math.round(radius / rule.mark) * rule.mark, rule)}`,
        direction,
        angle.toFixed(1),
        (formTo ?? [angle / 2, angle / 2]).map((half) => half.toFixed(1)).join(' + '),
      ]),
    },
  ];
}
