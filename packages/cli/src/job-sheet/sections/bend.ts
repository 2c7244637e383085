import { oneLine } from '../../drawing/measure-text.js';
import { printLength, type Rule } from '../../length/print-length.js';
import type { PlanFile, PlanFileStrip } from '../../plan-file/plan-file.js';
import { edgeText, seamText } from '../../report/edge-and-seam-text.js';
import {
  BEND_COLUMNS,
  bendRows,
  CURVE_COLUMNS,
  curveRows,
  PACKET_CURVES,
} from '../../report/mark-rows.js';
import { refoldText } from '../../report/refold-text.js';
import type { Block, Planned, Section, Step, Table } from '../job-sheet.js';
import { type Numbered, numbered, ruleOf, UNIT_NAMES } from './figures.js';

/** The bend schedule of each cutter. */
export function bend({ file }: Planned): readonly Section[] {
  return numbered(file).flatMap((entry) =>
    entry.blank.strip === undefined ? [] : [schedule(entry, entry.blank.strip, file)],
  );
}

function schedule(entry: Numbered, strip: PlanFileStrip, file: PlanFile): Section {
  const rule = ruleOf(file);
  const refold = refoldText(strip, rule);
  return {
    id: `bend-${entry.number}`,
    title: `Bend strip ${entry.number}, ${oneLine(entry.blank.id)}`,
    onNewPage: false,
    blocks: [
      facts(strip, rule),
      ...bends(strip, rule),
      ...curves(strip, rule),
      ...(refold === undefined ? [] : [{ kind: 'words', text: refold } as const]),
      { kind: 'steps', steps: steps(entry, strip) },
    ],
  };
}

function facts(strip: PlanFileStrip, rule: Rule): Table {
  const { part } = strip;
  return {
    kind: 'table',
    columns: [
      { heading: 'What', align: 'left' },
      { heading: 'How', align: 'left' },
    ],
    rows: [
      ['Outline', `${strip.outline}, ${printLength(strip.depth, rule)} deep`],
      ...(part === undefined ? [] : [['Part', `${part.number} of ${part.of}`]]),
      ['Edge', edgeText(strip, rule)],
      ['Seam', seamText(strip, rule)],
    ],
  };
}

function bends(strip: PlanFileStrip, rule: Rule): readonly Block[] {
  if (strip.bends.length === 0) return [{ kind: 'words', text: 'No sharp bends.' }];
  return [
    {
      kind: 'words',
      text:
        'Each mark runs from the square end. "in" folds toward the inside of the cutter. Degrees ' +
        'are those bent through: 90 is square. Bend to the angle under "Fold to", by which the ' +
        'ends meet on these marks.',
    },
    {
      kind: 'table',
      caption: `Bends, marks in ${UNIT_NAMES[rule.units]}`,
      columns: BEND_COLUMNS,
      rows: bendRows(strip, rule),
    },
  ];
}

function curves(strip: PlanFileStrip, rule: Rule): readonly Block[] {
  if (strip.curves.length === 0) return [];
  const opens = strip.curves.some(({ even }) => even === false);
  return [
    {
      kind: 'words',
      text: `Form each half of a curve through its degrees.${
        opens ? ' One that opens is told from its tightest radius on: form it to the drawing.' : ''
      }`,
    },
    {
      kind: 'table',
      caption: `Curves, in ${UNIT_NAMES[rule.units]}`,
      columns: CURVE_COLUMNS,
      rows: curveRows(strip, rule, PACKET_CURVES),
    },
  ];
}

function steps({ number, count }: Numbered, { edge, bends: own }: PlanFileStrip): readonly Step[] {
  const folds = edge !== undefined && edge.foldLines.length > 0;
  const isSquare = edge?.stage === 'square';
  const how = isSquare ? 'square, off the wall' : 'flat';
  return [
    ...(folds
      ? [{ id: `bend-${number}-hem`, text: `Fold the ${edge.kind} of all ${count} ${how}` }]
      : []),
    {
      id: `bend-${number}-first`,
      text: 'Bend one and lay it on the drawing',
      detail: `The ends must meet before the rest is bent.${
        own.length > 0 ? ' Keep to one side of each mark.' : ''
      }`,
    },
    ...(count > 1 ? [{ id: `bend-${number}-rest`, text: `Bend the other ${count - 1}` }] : []),
    ...(isSquare
      ? [{ id: `bend-${number}-close`, text: `Close the ${edge.kind} of all ${count}` }]
      : []),
  ];
}
