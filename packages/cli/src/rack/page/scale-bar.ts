import type { Drawing, Mark } from '../../drawing/drawing.js';
import { INK } from '../../drawing/ink.js';
import { ASCENT, LINE_HEIGHT, textWidth } from '../../drawing/measure-text.js';
import { textMark } from '../../drawing/text-mark.js';
import { MILLIMETRES, type ShopUnits } from '../../length/unit.js';

/** Lengths that a bar may stand for, in the shop's units. */
const LENGTHS: Readonly<Record<ShopUnits, readonly number[]>> = {
  in: [120, 60, 24, 12, 6, 4, 2],
  mm: [2000, 1000, 500, 200, 100, 50],
};
// Millimetres of paper.
const LONGEST = 70;
const HEIGHT = 2;
const SIZE = 3.4;
const GAP = 2;

/** A bar that shows how small things are drawn: `12 in, drawn 1 : 5`. */
export function drawScaleBar(scale: number, units: ShopUnits): Drawing {
  const lengths = LENGTHS[units];
  const fits = (length: number) => (length * MILLIMETRES[units]) / scale <= LONGEST;
  const length = lengths.find(fits) ?? lengths.at(-1) ?? 1;
  const half = (length * MILLIMETRES[units]) / scale / 2;
  const label = `${length} ${units}, drawn 1 : ${scale}`;
  const line = LINE_HEIGHT * SIZE;
  const width = 2 * half + GAP + textWidth(label) * SIZE;
  const bar = (x: number, fill: string): Mark => ({
    kind: 'rect',
    role: 'scale-bar',
    box: { x, y: (line - HEIGHT) / 2, width: half, height: HEIGHT },
    fill,
    stroke: INK.text,
    strokeWidth: 0.25,
  });
  const room = { x: 0, y: 0, width, height: line };
  const text = { role: 'scale', text: label, size: SIZE, room };
  return {
    title: `Scale 1 : ${scale}`,
    description: `A bar that stands for ${length} ${units}`,
    page: { x: -0.5, y: 0, width: width + 1, height: line },
    hatches: [],
    layers: [
      {
        name: 'scale',
        marks: [
          bar(0, INK.text),
          bar(half, INK.paper),
          textMark({ ...text, at: { x: 2 * half + GAP, y: ASCENT * SIZE } }),
        ],
      },
    ],
  };
}
