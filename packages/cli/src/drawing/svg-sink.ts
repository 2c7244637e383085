import { type Container, type Element, SVG, type Svg, withWindow } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import type { Drawing, Hatch, Mark, Pen, Point, RectMark, TextMark } from './drawing.js';

/** A hundredth of a millimetre: finer than any shear cuts or printer prints. */
const DECIMALS = 2;

/**
 * Writes a drawing as a whole SVG document of one user unit a millimetre.
 * The same drawing gives the same bytes. This is the only module that knows SVG.js and svgdom.
 */
export function writeSvg(drawing: Drawing): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svgElement(drawing)}\n`;
}

/**
 * The root element alone, for a page that has more on it.
 * @param size what it measures there, in millimetres; its own where it is left out
 */
export function svgElement(
  drawing: Drawing,
  size: { readonly width: number; readonly height: number } = drawing.page,
): string {
  const window = createSVGWindow();
  const root = window.document.documentElement;
  // svgdom's window has what SVG.js needs of a browser's, not all that one has.
  withWindow(window as never, () => draw(SVG(root) as unknown as Svg, drawing, size));
  // Not Svg.svg(): that one writes the library's own bookkeeping into the elements.
  return root.outerHTML;
}

function draw(
  root: Svg,
  { title, description, page, hatches, layers }: Drawing,
  size: { readonly width: number; readonly height: number },
): void {
  const [x, y, width, height] = [page.x, page.y, page.width, page.height].map(rounded);
  root.attr({
    width: `${rounded(size.width)}mm`,
    height: `${rounded(size.height)}mm`,
    viewBox: `${x} ${y} ${width} ${height}`,
    role: 'img',
    'font-family': 'sans-serif',
  });
  root.attr('xmlns:xlink', null);
  root.element('title').words(title);
  root.element('desc').words(description);
  const defs = root.defs();
  for (const hatch of hatches) addHatch(defs, hatch);
  for (const layer of layers) {
    const group = root.group().attr('class', layer.name);
    for (const mark of layer.marks) addMark(group, mark);
  }
}

function addHatch(parent: Container, hatch: Hatch): void {
  const { spacing } = hatch;
  const tile = parent.pattern(rounded(spacing), rounded(spacing));
  tile.attr({ id: hatch.id, patternTransform: 'rotate(45)' });
  tile.rect(rounded(spacing), rounded(spacing)).attr('fill', hatch.ground);
  const ink = { stroke: hatch.stroke, 'stroke-width': rounded(hatch.strokeWidth) };
  const middle = rounded(spacing / 2);
  tile.line(0, middle, rounded(spacing), middle).attr(ink);
  if (hatch.crossed) tile.line(middle, 0, middle, rounded(spacing)).attr(ink);
}

function addMark(parent: Container, mark: Mark): void {
  switch (mark.kind) {
    case 'rect':
      addRect(parent, mark);
      break;
    case 'line':
      ink(parent.polyline(flat(mark.points)), mark);
      break;
    case 'polygon':
      ink(parent.polygon(flat(mark.points)), mark);
      break;
    case 'text':
      addText(parent, mark);
      break;
  }
}

function addRect(parent: Container, mark: RectMark): void {
  // Edges are rounded, not extents, so that neighbours that touch still touch.
  const left = rounded(mark.box.x);
  const top = rounded(mark.box.y);
  const width = rounded(rounded(mark.box.x + mark.box.width) - left);
  const height = rounded(rounded(mark.box.y + mark.box.height) - top);
  const rect = parent.rect(width, height).attr({ x: left, y: top });
  if (mark.rounding !== undefined) rect.attr('rx', rounded(mark.rounding));
  ink(rect, mark);
  if (mark.hint !== undefined) rect.element('title').words(mark.hint);
}

function addText(parent: Container, mark: TextMark): void {
  const x = rounded(mark.at.x);
  const y = rounded(mark.at.y);
  const text = parent.plain(mark.text);
  text.attr({ x, y, 'font-size': rounded(mark.size), fill: mark.colour, class: mark.role });
  if (mark.anchor !== 'start') text.attr('text-anchor', mark.anchor);
  if (mark.bold) text.attr('font-weight', 'bold');
  if (mark.upright) text.attr('transform', `rotate(-90 ${x} ${y})`);
}

function ink(element: Element, pen: Pen & { readonly role?: string }): void {
  if (pen.role !== undefined) element.attr('class', pen.role);
  element.attr('fill', pen.fill ?? 'none');
  if (pen.stroke !== undefined) element.attr('stroke', pen.stroke);
  if (pen.strokeWidth !== undefined) element.attr('stroke-width', rounded(pen.strokeWidth));
  if (pen.dashes !== undefined) {
    element.attr('stroke-dasharray', pen.dashes.map(rounded).join(' '));
  }
}

const flat = (points: readonly Point[]): number[] =>
  points.flatMap(({ x, y }) => [rounded(x), rounded(y)]);

function rounded(value: number): number {
  const digits = Number(value.toFixed(DECIMALS));
  return digits === 0 ? 0 : digits;
}
