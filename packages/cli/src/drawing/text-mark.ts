import type { Box, Point, TextMark } from './drawing.js';
import { INK } from './ink.js';
import { ASCENT, LINE_HEIGHT, textWidth } from './measure-text.js';

export interface TextOptions {
  readonly role: string;
  readonly text: string;
  readonly at: Point;
  readonly size: number;
  readonly room: Box;
  readonly anchor?: TextMark['anchor'];
  readonly bold?: boolean;
  readonly upright?: boolean;
  readonly colour?: string;
}

/** A text mark with the box that it may take. */
export function textMark(options: TextOptions): TextMark {
  const { anchor = 'start', bold = false, upright = false, colour = INK.text, ...rest } = options;
  const width = textWidth(rest.text, bold) * rest.size;
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const above = ASCENT * rest.size;
  const height = LINE_HEIGHT * rest.size;
  const { x, y } = rest.at;
  const box = upright
    ? { x: x - above, y: y + before - width, width: height, height: width }
    : { x: x - before, y: y - above, width, height };
  return { kind: 'text', anchor, bold, upright, colour, box, ...rest };
}
