import type { Area, Block } from '../drawing/block.js';
import type { Mark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { ASCENT, LINE_HEIGHT, oneLine, shorten, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import type { CutMap } from './cut-map.js';
import { TYPE } from './paper.js';
import { printSize } from './print-size.js';

/** One blank of the layout: its number, name, size before turning and how many are on it. */
export interface LegendRow {
  readonly number: number;
  readonly name: string;
  readonly size: string;
  readonly count: number;
}

const HEADS: LegendCells = ['No.', 'Blank', 'Length × width', 'How many'];
const ONE_COLUMN = 10;
const GUTTER = 6;
/** Between cells, in multiples of the font size. */
const GAP = 1;
const LINE = LINE_HEIGHT + 0.25;

type LegendCells = readonly [string, string, string, string];

/** The blanks on a layout by their number. */
export function legendRows({ pieces, printLength }: CutMap): readonly LegendRow[] {
  const rows = new Map<number, LegendRow>();
  for (const piece of pieces) {
    const { number, turned, length, width } = piece;
    const unturned = turned ? { length: width, width: length } : { length, width };
    const row = rows.get(number) ?? {
      number,
      name: oneLine(piece.name),
      size: printSize(unturned, printLength),
      count: 0,
    };
    rows.set(number, { ...row, count: row.count + 1 });
  }
  return [...rows.values()].sort((one, other) => one.number - other.number);
}

/** Height of the table in millimetres of paper. */
export function legendHeight(rows: readonly LegendRow[]): number {
  return (tableLength(rows) + 1) * LINE * TYPE.small;
}

/** The blanks in a table; in two side by side if they are many. */
export function drawLegendTable(rows: readonly LegendRow[], area: Area): Block {
  if (rows.length === 0) return { marks: [], height: 0 };
  const tables = rows.length > ONE_COLUMN ? 2 : 1;
  const width = (area.width - (tables - 1) * GUTTER * area.unit) / tables;
  const length = tableLength(rows);
  const marks = Array.from({ length: tables }, (_, index) => index).flatMap((index) =>
    drawTable(rows.slice(index * length, (index + 1) * length), {
      ...area,
      left: area.left + index * (width + GUTTER * area.unit),
      width,
    }),
  );
  return { marks, height: legendHeight(rows) * area.unit };
}

const tableLength = (rows: readonly LegendRow[]): number =>
  rows.length > ONE_COLUMN ? Math.ceil(rows.length / 2) : rows.length;

function drawTable(rows: readonly LegendRow[], area: Area): readonly Mark[] {
  const size = TYPE.small * area.unit;
  const cells = rows.map(
    (row): LegendCells => [String(row.number), row.name, row.size, String(row.count)],
  );
  const widest = (column: 0 | 1 | 2 | 3): number =>
    Math.max(
      textWidth(HEADS[column], true),
      ...cells.map((row) => textWidth(row[column], column === 0)),
    );
  const all = area.width / size;
  const number = widest(0);
  const count = widest(3);
  const sizes = Math.min(widest(2), (all - number - count - 3 * GAP) * 0.6);
  const names = Math.min(widest(1), all - number - sizes - count - 3 * GAP);
  const starts = [0, number + GAP, number + GAP + names + GAP] as const;
  const end = starts[2] + sizes + GAP + count;
  const line = (row: LegendCells, index: number, role: string, bold: boolean): Mark[] => {
    const top = area.top + index * LINE * size;
    const y = top + ASCENT * size;
    const room = { x: area.left, y: top, width: area.width, height: LINE * size };
    const cell = (text: string, at: number, weight: boolean, anchor: 'start' | 'end' = 'start') =>
      textMark({
        role,
        text,
        at: { x: area.left + at * size, y },
        size,
        room,
        bold: weight,
        anchor,
      });
    return [
      cell(row[0], starts[0] + number, true, 'end'),
      cell(shorten(row[1], names, bold), starts[1], bold),
      cell(shorten(row[2], sizes, bold), starts[2], bold),
      cell(row[3], end, bold, 'end'),
    ];
  };
  const ruleY = area.top + LINE_HEIGHT * size + 0.08 * size;
  return [
    ...rows.map((row, index): Mark => {
      const top = area.top + (index + 1) * LINE * size;
      const box = { x: area.left, y: top, width: end * size, height: (LINE - 0.12) * size };
      return { kind: 'rect', role: 'legend-band', box, fill: tint(row.number) };
    }),
    ...line(HEADS, 0, 'legend-head', true),
    {
      kind: 'line',
      points: [
        { x: area.left, y: ruleY },
        { x: area.left + end * size, y: ruleY },
      ],
      stroke: INK.soft,
      strokeWidth: 0.2 * area.unit,
    },
    ...cells.flatMap((row, index) => line(row, index + 1, 'legend-row', false)),
  ];
}
