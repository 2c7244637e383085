import type { Block, Table } from '../job-sheet/job-sheet.js';
import type { Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import {
  BEND_COLUMNS,
  bendRows,
  CURVE_COLUMNS,
  curveRows,
  PACKET_CURVES,
} from '../report/mark-rows.js';

const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = { in: 'inches', mm: 'millimetres' };

/** The tables of running marks: where to bend, which way and how far; where to form, and round what. */
export function markBlocks(strip: PlanFileStrip, rule: Rule): readonly Block[] {
  return [...bendBlocks(strip, rule), ...curveBlocks(strip, rule)];
}

function bendBlocks(strip: PlanFileStrip, rule: Rule): readonly Table[] {
  if (strip.bends.length === 0) return [];
  return [
    {
      kind: 'table',
      caption:
        `Bends: marks from the square end, in ${UNIT_NAMES[rule.units]}; degrees bent through, ` +
        '90 is square. Bend to those under "fold to".',
      columns: BEND_COLUMNS,
      rows: bendRows(strip, rule),
    },
  ];
}

function curveBlocks(strip: PlanFileStrip, rule: Rule): readonly Table[] {
  if (strip.curves.length === 0) return [];
  const opens = strip.curves.some(({ even }) => even === false);
  return [
    {
      kind: 'table',
      caption:
        `Curves: formed between the marks, in ${UNIT_NAMES[rule.units]}, each half through its ` +
        `degrees.${opens ? ' "from" tells the tightest radius of a curve that opens.' : ''}`,
      columns: CURVE_COLUMNS,
      rows: curveRows(strip, rule, PACKET_CURVES),
    },
  ];
}
