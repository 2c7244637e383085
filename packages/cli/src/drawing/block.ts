import type { Mark } from './drawing.js';
import { ASCENT, LINE_HEIGHT, wrap } from './measure-text.js';
import { textMark } from './text-mark.js';

/** Where a block of text or figures begins, and how wide it may be, in millimetres. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** Millimetres of drawing for a millimetre of paper. */
  readonly unit: number;
}

/** What a block drew, and the height it took in millimetres. */
export interface Block {
  readonly marks: readonly Mark[];
  readonly height: number;
}

export const NOTHING: Block = { marks: [], height: 0 };

/** Lays blocks one below the other, `gap` millimetres apart; empty ones take no room. */
export function stack(area: Area, gap: number, blocks: readonly ((area: Area) => Block)[]): Block {
  let top = area.top;
  const marks: Mark[] = [];
  for (const block of blocks) {
    const drawn = block({ ...area, top });
    marks.push(...drawn.marks);
    if (drawn.height > 0) top += drawn.height + gap;
  }
  return { marks, height: Math.max(0, top - gap - area.top) };
}

/** A text broken into lines. @param size font size in millimetres of paper */
export function paragraph(area: Area, role: string, text: string, size: number): Block {
  const font = size * area.unit;
  const line = LINE_HEIGHT * font;
  const lines = wrap(text, area.width / font);
  const marks = lines.map((each, index) => {
    const top = area.top + index * line;
    return textMark({
      role,
      text: each,
      at: { x: area.left, y: top + ASCENT * font },
      size: font,
      room: { x: area.left, y: top, width: area.width, height: line },
    });
  });
  return { marks, height: lines.length * line };
}
