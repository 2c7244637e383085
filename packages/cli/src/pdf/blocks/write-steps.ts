import { INK } from '../../drawing/ink.js';
import type { Steps } from '../../job-sheet/job-sheet.js';
import { type Flow, lineHeight } from '../flow.js';
import { BODY, SMALL } from '../look.js';

const BOX = 3.6;
const INDENT = BOX + 2.4;
const GAP = 1.4;

/** Steps, each with a box to tick and kept together on its page. */
export function writeSteps(flow: Flow, { steps }: Steps): void {
  const width = flow.width - INDENT;
  for (const { text, detail } of steps) {
    const lines = flow.lines(text, width, BODY);
    const small = detail === undefined ? [] : flow.lines(detail, width, SMALL);
    const height = lines.length * lineHeight(BODY) + small.length * lineHeight(SMALL);
    flow.need(Math.min(Math.max(height, BOX), flow.pageRoom));
    flow.document.undash().lineWidth(0.35);
    flow.document.rect(flow.left, flow.top + 0.1, BOX, BOX).stroke(INK.text);
    const write = (line: string, look: typeof BODY | typeof SMALL) => {
      flow.need(lineHeight(look));
      flow.put(line, flow.left + INDENT, flow.top, look);
      flow.top += lineHeight(look);
    };
    for (const line of lines) write(line, BODY);
    for (const line of small) write(line, SMALL);
    flow.top += GAP + Math.max(0, BOX - height);
  }
}
