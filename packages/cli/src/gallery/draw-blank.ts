import { type FlatPattern, flatPattern, type Strip } from '@stripwright/strip-geometry';
import type { Mark, Pen, Point } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { BASELINE_DROP } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';

/** Dashes that tell the lines on a strip apart without colour. */
export const DASHES = { in: 'none', out: [2, 1], hem: [0.4, 0.8] } as const;

const FINE = { stroke: INK.text, strokeWidth: 0.35 } as const;
const NAME_SIZE = 2.6;
/** Hundredths of a millimetre are nothing to a hand. */
const NEAR = 0.01;

export interface DrawnBlank {
  readonly marks: readonly Mark[];
  /** Where the line of each bend begins, in their order. */
  readonly bendHeads: readonly Point[];
}

/**
 * The flat pattern, its hem above: the metal with its notches and end cuts, the formed
 * stretches and the tab tinted, bend lines, hem line and slits.
 *
 * @param left page coordinates of the strip's square end
 * @param top and of its hemmed edge
 * @param scale millimetres of page for a millimetre of strip
 */
export function drawBlank(strip: Strip, left: number, top: number, scale: number): DrawnBlank {
  const pattern = flatPattern(strip);
  const onPage = ({ x, y }: Point): Point => ({ x: left + x * scale, y: top + y * scale });
  const line = (role: string, from: Point, to: Point, dashes: readonly number[] | 'none'): Mark => {
    const pen: Pen = { ...FINE, ...(dashes === 'none' ? {} : { dashes }) };
    return { kind: 'line', role, points: [onPage(from), onPage(to)], ...pen };
  };
  const outline = pattern.outline.map(onPage);
  return {
    marks: [
      { kind: 'polygon', role: 'metal', points: outline, fill: INK.paper },
      ...formedMarks(strip, onPage),
      ...tabMarks(strip, pattern, onPage),
      ...pattern.scribeLines.map(({ from, to }) => line('hem-line', from, to, DASHES.hem)),
      ...pattern.slits.map(({ from, to }) => line('slit', from, to, 'none')),
      ...pattern.bends.map(({ direction, line: { from, to } }) =>
        line(`bend-${direction}`, from, to, DASHES[direction]),
      ),
      { kind: 'polygon', role: 'strip-edge', points: outline, stroke: INK.text, strokeWidth: 0.5 },
    ],
    bendHeads: pattern.bends.map((bend) => onPage(bend.line.from)),
  };
}

type ToPage = (point: Point) => Point;

/** The wall of the cutter where it is formed; the hem above it is left as it is. */
function formedMarks({ curves, hem, width }: Strip, onPage: ToPage): readonly Mark[] {
  return curves.map(({ from, to }): Mark => {
    const points = [
      { x: from, y: hem },
      { x: to, y: hem },
      { x: to, y: width },
      { x: from, y: width },
    ].map(onPage);
    const pen = { fill: tint(1), stroke: INK.soft, strokeWidth: 0.15 };
    return { kind: 'polygon', role: 'formed', points, ...pen };
  });
}

/** What of the metal lies past the place where the ends meet. */
function tabMarks(
  { tab, length, width, hem }: Strip,
  { outline }: FlatPattern,
  onPage: ToPage,
): readonly Mark[] {
  if (tab === 0) return [];
  const start = length - tab;
  const points = [...outline.filter(({ x }) => x >= start - NEAR), { x: start, y: width }];
  const middle = onPage({ x: start + tab / 2, y: (hem + width) / 2 });
  return [
    { kind: 'polygon', role: 'tab', points: points.map(onPage), fill: INK.scrapGround },
    textMark({
      role: 'tab-name',
      text: 'tab',
      at: { x: middle.x, y: middle.y + BASELINE_DROP * NAME_SIZE },
      size: NAME_SIZE,
      anchor: 'middle',
      room: boxOf(onPage({ x: start, y: hem }), onPage({ x: length, y: width })),
    }),
  ];
}

function boxOf(from: Point, to: Point) {
  return { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y };
}
