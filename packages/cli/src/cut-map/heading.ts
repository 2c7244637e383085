import type { Area, Block } from '../drawing/block.js';
import type { Mark, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { ASCENT, LINE_HEIGHT, oneLine, shorten, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import type { CutMap } from './cut-map.js';
import { TYPE } from './paper.js';
import { printSize } from './print-size.js';

/** In millimetres of paper. */
export const HEADING_HEIGHT = LINE_HEIGHT * (TYPE.title + 2 * TYPE.lead);

const ROLLED = 'rolled this way';

/** What the page is of, on the left, and how many to cut, on the right. */
export function drawHeading(map: CutMap, area: Area): Block {
  const { stock } = map;
  const kind = stock.kind === 'offcut' ? 'Offcut' : 'Sheet';
  const rows = [
    {
      left: { role: 'title', text: oneLine(map.title), size: TYPE.title, bold: true },
      right: { role: 'layout', text: layoutWords(map), size: TYPE.lead, bold: false },
    },
    {
      left: { role: 'stock-name', text: oneLine(stock.name), size: TYPE.lead, bold: false },
      right: { role: 'count', text: countWords(map), size: TYPE.lead, bold: true },
    },
    {
      left: {
        role: 'stock-size',
        text: oneLine(
          [kind, printSize(stock, map.printLength), stock.lies].filter(Boolean).join(', '),
        ),
        size: TYPE.lead,
        bold: false,
      },
      right:
        stock.rolled === undefined
          ? undefined
          : { role: 'rolled', text: ROLLED, size: TYPE.body, bold: false },
    },
  ];
  let top = area.top;
  const marks: readonly Mark[] = rows.flatMap(({ left, right }) => {
    const height = LINE_HEIGHT * left.size * area.unit;
    const room = { x: area.left, y: top, width: area.width, height };
    const y = top + ASCENT * left.size * area.unit;
    top += height;
    const mark = right?.role === 'rolled' ? ARROW.long + ARROW.gap : 0;
    const taken = right
      ? ((textWidth(right.text, right.bold) + 1.5) * right.size + mark) * area.unit
      : 0;
    const size = left.size * area.unit;
    const text = shorten(left.text, (area.width - taken) / size, left.bold);
    return [
      textMark({ ...left, text, size, at: { x: area.left, y }, room }),
      ...(right === undefined
        ? []
        : [
            textMark({
              ...right,
              size: right.size * area.unit,
              anchor: 'end',
              at: { x: area.left + area.width, y },
              room,
            }),
          ]),
    ];
  });
  const arrow = stock.rolled === undefined ? [] : rollingArrow(stock.rolled, area);
  return { marks: [...marks, ...arrow], height: top - area.top };
}

/** In millimetres of paper. */
const ARROW = { long: 9, high: 4.6, head: 1.2, gap: 1.4 } as const;

/** An arrow with two heads, as the map lies, before the words of the third line. */
function rollingArrow(
  rolled: 'along' | 'across',
  { left, top, width, unit }: Area,
): readonly Mark[] {
  const words = textWidth(ROLLED) * TYPE.body + ARROW.gap;
  const middle = {
    x: left + width - (words + ARROW.long / 2) * unit,
    y: top + LINE_HEIGHT * (TYPE.title + 1.5 * TYPE.lead) * unit,
  };
  const half = ((rolled === 'along' ? ARROW.long : ARROW.high) / 2) * unit;
  const head = ARROW.head * unit;
  /** From the middle: along the arrow, and beside it. */
  const at = (along: number, beside: number): Point =>
    rolled === 'along'
      ? { x: middle.x + along, y: middle.y + beside }
      : { x: middle.x + beside, y: middle.y + along };
  const pen = { stroke: INK.text, strokeWidth: 0.3 * unit };
  return [
    { kind: 'line', role: `rolled-${rolled}`, points: [at(-half, 0), at(half, 0)], ...pen },
    ...[-1, 1].map((end): Mark => {
      const back = end * (half - head);
      return {
        kind: 'line',
        points: [at(back, -head / 2), at(end * half, 0), at(back, head / 2)],
        ...pen,
      };
    }),
  ];
}

export const layoutWords = ({ number, of }: CutMap): string => `Layout ${number} of ${of}`;

export const countWords = ({ count }: CutMap): string => `Cut ${count} like this`;
