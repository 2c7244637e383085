import type { Picture } from '../../job-sheet/job-sheet.js';
import { drawDrawing } from '../drawing-sink.js';
import { type Flow, lineHeight } from '../flow.js';
import { SMALL } from '../look.js';

/** A picture may be so much smaller than a page allows, to stay below its title. */
const LEAST_OF_FITTING = 0.85;

/**
 * A drawing in the middle of the page: at its true size where that is asked for, or else as
 * large as the page is wide and high, or what is left of the page where that is nearly as much.
 */
export function writePicture(flow: Flow, { drawing, trueScale, caption }: Picture): void {
  const { page } = drawing;
  const lines = caption === undefined ? [] : flow.lines(caption, flow.width, SMALL);
  const below = lines.length * lineHeight(SMALL);
  const fitting = Math.min(flow.width / page.width, (flow.pageRoom - below) / page.height);
  const here = Math.min(fitting, (flow.room - below) / page.height);
  const drawn = here >= LEAST_OF_FITTING * fitting ? here : fitting;
  const scale = trueScale ? 1 : drawn;
  flow.need(page.height * scale + below);
  const corner = { x: flow.left + (flow.width - page.width * scale) / 2, y: flow.top };
  drawDrawing(flow.document, flow.pen, drawing, { corner, scale });
  flow.top += page.height * scale;
  lines.forEach((line) => {
    flow.put(line, flow.left, flow.top, SMALL);
    flow.top += lineHeight(SMALL);
  });
}
