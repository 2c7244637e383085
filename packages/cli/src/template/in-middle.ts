import type { Box, Mark } from '../drawing/drawing.js';
import { BASELINE_DROP } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import { TYPE } from './page-format.js';

/** Words in the middle of a box that holds them. */
export function inMiddle(role: string, text: string, room: Box, upright = false): Mark {
  const drop = BASELINE_DROP * TYPE.body;
  const middle = { x: room.x + room.width / 2, y: room.y + room.height / 2 };
  const at = upright ? { x: middle.x + drop, y: middle.y } : { x: middle.x, y: middle.y + drop };
  return textMark({ role, text, at, size: TYPE.body, anchor: 'middle', room, upright });
}
