import type { Mark, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { ASCENT, BASELINE_DROP, LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';

/** Font size of tags, millimetres. */
const SIZE = 3;
const SIDE = 0.45;

/** What a tag stands for, which decides how it looks. */
export interface Tagged {
  readonly of: 'bend' | 'curve';
  readonly direction: 'in' | 'out';
}

export const TAG_HEIGHT = LINE_HEIGHT * SIZE;

export function tagWidth(label: string): number {
  return Math.max((textWidth(label, true) + 2 * SIDE) * SIZE, TAG_HEIGHT);
}

/**
 * The name of a bend or curve, the same on shape and strip: round for a bend, square for a
 * curve; white where it goes inward, dark where it goes outward.
 */
export function tag(role: string, label: string, tagged: Tagged, middle: Point): readonly Mark[] {
  const [width, height] = [tagWidth(label), TAG_HEIGHT];
  const box = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
  const dark = tagged.direction === 'out';
  return [
    {
      kind: 'rect',
      role: `${role}-frame`,
      box,
      rounding: tagged.of === 'curve' ? 0.3 : height / 2,
      fill: dark ? INK.text : INK.paper,
      stroke: INK.text,
      strokeWidth: 0.25,
    },
    textMark({
      role,
      text: label,
      at: { x: middle.x, y: middle.y + BASELINE_DROP * SIZE },
      size: SIZE,
      room: box,
      anchor: 'middle',
      bold: true,
      colour: dark ? INK.paper : INK.text,
    }),
  ];
}

/** A line of words, its top left corner at a point. */
export function words(
  role: string,
  text: string,
  at: Point,
  size: number,
  options: { readonly bold?: boolean; readonly colour?: string } = {},
): Mark {
  const width = textWidth(text, options.bold) * size;
  const room = { x: at.x, y: at.y, width, height: LINE_HEIGHT * size };
  return textMark({ role, text, at: { x: at.x, y: at.y + ASCENT * size }, size, room, ...options });
}
