import type { Area, Block } from '../drawing/block.js';
import type { Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { ASCENT, LINE_HEIGHT, shorten, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import { PAPER, TYPE } from './paper.js';

const LENGTHS = [100, 50, 20, 10, 5] as const;
const LIMIT = 0.4 * PAPER.width;
const DO_NOT_SCALE = 'Cut to the figures; do not measure the paper.';

/** A bar of 100 mm (less on small stock), marked in millimetres and as the shop writes lengths. */
export function drawScaleBar(print: (millimetres: number) => string, area: Area): Block {
  const { unit, left, top } = area;
  const length = LENGTHS.find((each) => each <= LIMIT * unit) ?? LENGTHS[LENGTHS.length - 1] ?? 5;
  const size = TYPE.small * unit;
  const height = LINE_HEIGHT * size;
  const middle = top + height / 2;
  const rise = 0.9 * unit;
  const half = length / 2;
  const metric = `${length} mm`;
  const shop = print(length);
  const label = shop === metric ? metric : `${metric} (${shop})`;
  const start = left + length + 1.5 * unit;
  const y = top + ASCENT * size;
  const room = { x: left, y: top, width: area.width, height };
  const bar = (x: number, fill: string): Mark => ({
    kind: 'rect',
    role: 'scale-bar',
    box: { x, y: middle - rise / 2, width: half, height: rise },
    fill,
    stroke: INK.text,
    strokeWidth: 0.18 * unit,
  });
  const noteStart = start + (textWidth(label) + 2) * size;
  const note = shorten(DO_NOT_SCALE, (left + area.width - noteStart) / size);
  return {
    marks: [
      bar(left, INK.text),
      bar(left + half, INK.paper),
      textMark({ role: 'scale', text: label, at: { x: start, y }, size, room }),
      ...(note === DO_NOT_SCALE
        ? [textMark({ role: 'note', text: note, at: { x: noteStart, y }, size, room })]
        : []),
    ],
    height,
  };
}
