import { type Refold, roundMarks, type Strip } from '@stripwright/strip-geometry';
import type { Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { ASCENT, LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import { printBareLength, type Rule } from '../length/print-length.js';
import { bendLabel, curveLabel } from './places.js';

const SIZE = 3;
const LINE = (LINE_HEIGHT + 0.12) * SIZE;
const GAP = 4;

interface Column {
  readonly heading: string;
  readonly align: 'start' | 'end';
}

const BENDS: readonly Column[] = [
  { heading: 'Bend', align: 'end' },
  { heading: 'Mark', align: 'end' },
  { heading: 'Fold', align: 'start' },
  { heading: 'Drawn', align: 'end' },
  { heading: 'Fold to', align: 'end' },
];
const CURVES: readonly Column[] = [
  { heading: 'Curve', align: 'end' },
  { heading: 'From', align: 'end' },
  { heading: 'To', align: 'end' },
  { heading: 'Form', align: 'start' },
  { heading: 'Radius', align: 'end' },
  { heading: 'Drawn', align: 'end' },
  { heading: 'Halves', align: 'end' },
];

export interface DrawnFigures {
  readonly marks: readonly Mark[];
  readonly height: number;
}

/**
 * The bends and the curves of a strip in two tables, one below the other, with the
 * angles drawn and those by which the ends meet on rounded marks.
 */
export function drawFigures(
  strip: Strip,
  { folds, curves: formed }: Refold,
  rule: Rule,
  { left, top }: { readonly left: number; readonly top: number },
): DrawnFigures {
  const mark = (length: number): string =>
    printBareLength(roundMarks([length], rule.mark)[0] ?? length, rule);
  const bends = strip.bends.map(({ number, at, direction, angle }, index) => {
    const told = folds.find((fold) => fold.number === number)?.told;
    const sense = told?.direction === direction ? 1 : -1;
    const foldTo = told === undefined ? angle : sense * told.angle;
    return [bendLabel(index), mark(at), direction, angle.toFixed(1), foldTo.toFixed(1)];
  });
  const runs = strip.runs.filter((run) => run.kind === 'curve');
  const curves = runs.map(({ from, to, direction, angle, radius, even }, index) => [
    curveLabel(index),
    mark(from),
    mark(to),
    direction,
    even ? mark(radius) : `from ${mark(radius)}`,
    angle.toFixed(1),
    (formed.find(({ number }) => number === index + 1)?.told ?? [angle / 2, angle / 2])
      .map((half) => half.toFixed(1))
      .join(' + '),
  ]);
  const first = drawTable('figure-bend', BENDS, bends, left, top);
  const between = bends.length > 0 ? LINE / 2 : 0;
  const second = drawTable('figure-curve', CURVES, curves, left, top + first.height + between);
  return {
    marks: [...first.marks, ...second.marks],
    height: first.height + between + second.height,
  };
}

function drawTable(
  role: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  left: number,
  top: number,
): DrawnFigures {
  if (rows.length === 0) return { marks: [], height: 0 };
  let edge = left;
  const marks = columns.flatMap(({ heading, align }, column): readonly Mark[] => {
    const cells = rows.map((row) => row[column] ?? '');
    const widths = cells.map((cell) => textWidth(cell, column === 0));
    const width = Math.max(textWidth(heading, true), ...widths) * SIZE;
    const x = align === 'start' ? edge : edge + width;
    const place = (text: string, index: number, name: string, bold: boolean): Mark => {
      const y = top + index * LINE;
      const room = { x: edge, y, width, height: LINE };
      const at = { x, y: y + ASCENT * SIZE };
      return textMark({ role: name, text, at, size: SIZE, room, anchor: align, bold });
    };
    const drawn = [
      place(heading, 0, `${role}-head`, true),
      ...cells.map((cell, index) =>
        place(cell, index + 1, column === 0 ? role : `${role}-cell`, column === 0),
      ),
    ];
    edge += width + GAP;
    return drawn;
  });
  const y = top + LINE - 0.1;
  const rule: Mark = {
    kind: 'line',
    points: [
      { x: left, y },
      { x: edge - GAP, y },
    ],
    stroke: INK.soft,
    strokeWidth: 0.2,
  };
  return { marks: [...marks, rule], height: (rows.length + 1) * LINE };
}
