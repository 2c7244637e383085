import type { Box, Drawing, Hatch, Mark, Pen, Point, TextMark } from '../drawing/drawing.js';
import type { PdfDocument, TextPen } from './pen.js';

/** Where on the page a drawing lies. */
export interface Placing {
  /** Millimetres of page. */
  readonly corner: Point;
  /** Millimetres of page for a millimetre of drawing. */
  readonly scale: number;
}

/** Draws a drawing on the current page, as vectors and letters. */
export function drawDrawing(
  document: PdfDocument,
  pen: TextPen,
  { page, hatches, layers }: Drawing,
  { corner, scale }: Placing,
): void {
  document.save();
  document.translate(corner.x, corner.y).scale(scale).translate(-page.x, -page.y);
  document.rect(page.x, page.y, page.width, page.height).clip();
  const known = new Map(hatches.map((hatch) => [`url(#${hatch.id})`, hatch]));
  for (const { marks } of layers) {
    for (const mark of marks) drawMark(document, pen, mark, known);
  }
  document.restore();
}

type Hatches = ReadonlyMap<string, Hatch>;

function drawMark(document: PdfDocument, pen: TextPen, mark: Mark, hatches: Hatches): void {
  if (mark.kind === 'text') {
    drawText(document, pen, mark);
    return;
  }
  const hatch = mark.fill === undefined ? undefined : hatches.get(mark.fill);
  if (hatch !== undefined) drawHatch(document, mark, hatch);
  const fill = hatch === undefined && mark.fill !== 'none' ? mark.fill : undefined;
  const { stroke } = mark;
  if (fill === undefined && stroke === undefined) return;
  trace(document, mark);
  if (stroke !== undefined) strokeWith(document, mark);
  if (fill !== undefined && stroke !== undefined) document.fillAndStroke(fill, stroke);
  else if (fill !== undefined) document.fill(fill);
  else if (stroke !== undefined) document.stroke(stroke);
}

function trace(document: PdfDocument, mark: Exclude<Mark, TextMark>): void {
  if (mark.kind === 'rect') {
    const { x, y, width, height } = mark.box;
    if (mark.rounding === undefined) document.rect(x, y, width, height);
    else document.roundedRect(x, y, width, height, Math.min(mark.rounding, width / 2, height / 2));
    return;
  }
  mark.points.forEach(({ x, y }, index) => {
    if (index === 0) document.moveTo(x, y);
    else document.lineTo(x, y);
  });
  if (mark.kind === 'polygon') document.closePath();
}

/** As SVG has it: lines 1 wide where nothing else is said. */
function strokeWith(document: PdfDocument, { strokeWidth = 1, dashes }: Pen): void {
  document.lineWidth(strokeWidth);
  if (dashes === undefined || dashes.length === 0) document.undash();
  // Dashes may be listed, as in SVG; the types know one length alone.
  else document.dash(dashes as unknown as number, {});
}

/** The lines of a hatch at 45 degrees, as the SVG's pattern lays them from the origin. */
function drawHatch(document: PdfDocument, mark: Exclude<Mark, TextMark>, hatch: Hatch): void {
  const box = mark.kind === 'rect' ? mark.box : aroundPoints(mark.points);
  document.save();
  trace(document, mark);
  document.clip();
  document.rect(box.x, box.y, box.width, box.height).fill(hatch.ground);
  document.undash().lineWidth(hatch.strokeWidth);
  for (const sense of hatch.crossed ? [1, -1] : [1]) {
    for (const [from, to] of hatchLines(box, hatch.spacing, sense)) {
      document.moveTo(from.x, from.y).lineTo(to.x, to.y);
    }
  }
  document.stroke(hatch.stroke);
  document.restore();
}

/** Lines x·sense = y + c across a box, as far apart as the hatch's spacing. */
function hatchLines(
  box: Box,
  spacing: number,
  sense: number,
): readonly (readonly [Point, Point])[] {
  const step = spacing * Math.SQRT2;
  const offsets = [box.y, box.y + box.height].flatMap((y) =>
    [box.x, box.x + box.width].map((x) => y - sense * x),
  );
  const [least, most] = [Math.min(...offsets), Math.max(...offsets)];
  const first = Math.ceil(least / step - 0.5);
  const count = Math.max(0, Math.floor(most / step - 0.5) - first + 1);
  return Array.from({ length: count }, (_, index) => {
    const offset = (first + index + 0.5) * step;
    const at = (x: number): Point => ({ x, y: sense * x + offset });
    return [at(box.x), at(box.x + box.width)] as const;
  });
}

function aroundPoints(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Text that comes out wider than the room it was given is set smaller. */
function drawText(document: PdfDocument, pen: TextPen, mark: TextMark): void {
  const { text, at, anchor, bold, upright, colour, box } = mark;
  const room = upright ? box.height : box.width;
  const natural = pen.width(text, mark.size, bold);
  const size = natural > room && room > 0 ? (mark.size * room) / natural : mark.size;
  const width = pen.width(text, size, bold);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  if (!upright) {
    pen.write(text, { x: at.x - before, y: at.y }, { size, bold, colour });
    return;
  }
  document.save();
  document.translate(at.x, at.y).rotate(-90);
  pen.write(text, { x: -before, y: 0 }, { size, bold, colour });
  document.restore();
}
