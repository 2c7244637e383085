import type { Box, TextMark } from '../drawing/drawing.js';
import { BASELINE_DROP } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';

/**
 * A rectangle to write in along its longer side: from left to right if it lies, up the page if it
 * stands (or as told). `s` counts along the reading direction, `t` down from the head of the text.
 */
export interface ReadingFrame {
  readonly long: number;
  readonly short: number;
  /** The part of the rectangle at (s, t) as a box of the drawing. */
  readonly box: (s: number, t: number, long: number, short: number) => Box;
  /** A line of text whose middle lies at `t`. */
  readonly text: (line: FrameLine) => TextMark;
}

export interface FrameLine {
  readonly role: string;
  readonly text: string;
  readonly s: number;
  readonly t: number;
  readonly size: number;
  readonly anchor?: TextMark['anchor'];
  readonly bold?: boolean;
}

export function readingFrame(box: Box, upright = box.height > box.width): ReadingFrame {
  const foot = box.y + box.height;
  return {
    long: upright ? box.height : box.width,
    short: upright ? box.width : box.height,
    box: (s, t, long, short) =>
      upright
        ? { x: box.x + t, y: foot - s - long, width: short, height: long }
        : { x: box.x + s, y: box.y + t, width: long, height: short },
    text: ({ s, t, ...line }) => {
      const baseline = t + BASELINE_DROP * line.size;
      const at = upright
        ? { x: box.x + baseline, y: foot - s }
        : { x: box.x + s, y: box.y + baseline };
      return textMark({ ...line, at, upright, room: box });
    },
  };
}
