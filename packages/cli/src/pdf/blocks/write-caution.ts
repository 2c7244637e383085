import { INK } from '../../drawing/ink.js';
import type { Caution } from '../../job-sheet/job-sheet.js';
import { type Flow, lineHeight } from '../flow.js';
import { BODY, STRONG } from '../look.js';

const PAD = 2.4;
const BAR = 1.6;

/** The height of the frame, in millimetres. */
export function cautionHeight(flow: Flow, caution: Caution): number {
  return 2 * PAD + lineHeight(STRONG) + textOf(flow, caution).length * lineHeight(BODY);
}

/** A frame with a heavy edge and the word, so that it stands out in black and white. */
export function writeCaution(flow: Flow, caution: Caution): void {
  const text = textOf(flow, caution);
  const height = cautionHeight(flow, caution);
  flow.need(Math.min(height, flow.pageRoom));
  const { left, width, document } = flow;
  document.undash().lineWidth(0.4);
  document.rect(left, flow.top, width, height).stroke(INK.text);
  document.rect(left, flow.top, BAR, height).fill(INK.text);
  const start = left + BAR + PAD;
  flow.put('Caution', start, flow.top + PAD, STRONG);
  text.forEach((line, index) => {
    flow.put(line, start, flow.top + PAD + lineHeight(STRONG) + index * lineHeight(BODY), BODY);
  });
  flow.top += height;
}

function textOf(flow: Flow, { lines }: Caution): readonly string[] {
  return flow.lines(lines.join(' '), flow.width - 2 * PAD - BAR, BODY);
}
