import type { Area, Block } from '../drawing/block.js';
import { ASCENT, LINE_HEIGHT, oneLine, shorten, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import type { CutMap } from './cut-map.js';
import { TYPE } from './paper.js';
import { printSize } from './print-size.js';

/** In millimetres of paper. */
export const HEADING_HEIGHT = LINE_HEIGHT * (TYPE.title + 2 * TYPE.lead);

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
      right: undefined,
    },
  ];
  let top = area.top;
  const marks = rows.flatMap(({ left, right }) => {
    const height = LINE_HEIGHT * left.size * area.unit;
    const room = { x: area.left, y: top, width: area.width, height };
    const y = top + ASCENT * left.size * area.unit;
    top += height;
    const taken = right ? (textWidth(right.text, right.bold) + 1.5) * right.size * area.unit : 0;
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
  return { marks, height: top - area.top };
}

export const layoutWords = ({ number, of }: CutMap): string => `Layout ${number} of ${of}`;

export const countWords = ({ count }: CutMap): string => `Cut ${count} like this`;
