import type { FlatPattern, ScribeLine, Strip } from '@stripwright/strip-geometry';
import { clipPolygon } from '../drawing/clip.js';
import type { LineMark, Pen, Point, PolygonMark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';

/** Dashes that tell the lines on a strip apart without colour. */
export const DASHES = {
  in: 'none',
  out: [2, 1],
  hem: [0.4, 0.8],
  seam: [3, 0.8, 0.4, 0.8],
} as const;

const FINE = { stroke: INK.text, strokeWidth: 0.35 } as const;

const SCRIBED: Readonly<
  Record<ScribeLine['purpose'], readonly [role: string, dashes: readonly number[]]>
> = {
  'hem line': ['hem-line', DASHES.hem],
  'seam fold': ['seam-fold', DASHES.seam],
  rivets: ['rivets', DASHES.seam],
};

/** From the flat pattern, x from the square end and y from the hemmed edge, to the page. */
export type ToPage = (point: Point) => Point;

/**
 * The flat pattern without words: the metal with its notches and end cuts, the formed
 * stretches and what the seam takes tinted, the lines to scribe, bend lines and slits.
 */
export function patternMarks(
  strip: Strip,
  pattern: FlatPattern,
  onPage: ToPage,
): readonly (LineMark | PolygonMark)[] {
  const line = (
    role: string,
    from: Point,
    to: Point,
    dashes: readonly number[] | 'none',
  ): LineMark => {
    const pen: Pen = { ...FINE, ...(dashes === 'none' ? {} : { dashes }) };
    return { kind: 'line', role, points: [onPage(from), onPage(to)], ...pen };
  };
  const outline = pattern.outline.map(onPage);
  return [
    { kind: 'polygon', role: 'metal', points: outline, fill: INK.paper },
    ...formedMarks(strip, onPage),
    ...seamMarks(strip, pattern, onPage),
    ...pattern.scribeLines.map(({ purpose, from, to }) => {
      const [role, dashes] = SCRIBED[purpose];
      return line(role, from, to, dashes);
    }),
    ...pattern.slits.map(({ from, to }) => line('slit', from, to, 'none')),
    ...pattern.bends.map(({ direction, line: { from, to } }) =>
      line(`bend-${direction}`, from, to, DASHES[direction]),
    ),
    { kind: 'polygon', role: 'strip-edge', points: outline, stroke: INK.text, strokeWidth: 0.5 },
  ];
}

/** The wall of the cutter where it is formed; the hem above it is left as it is. */
function formedMarks({ curves, hem, width }: Strip, onPage: ToPage): readonly PolygonMark[] {
  return curves.map(({ from, to }) => {
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

/** What of the metal lies before and past the place where the ends meet. */
function seamMarks(
  { tab, length, width, seam: { atStart } }: Strip,
  { outline }: FlatPattern,
  onPage: ToPage,
): readonly PolygonMark[] {
  const between = (role: string, x: number, along: number): readonly PolygonMark[] => {
    const points = clipPolygon(outline, { x, y: 0, width: along, height: width });
    const pen = { fill: INK.scrapGround, stroke: INK.soft, strokeWidth: 0.15 };
    return along === 0 || points.length === 0
      ? []
      : [{ kind: 'polygon', role, points: points.map(onPage), ...pen }];
  };
  return [...between('seam-start', 0, atStart), ...between('tab', length - tab, tab)];
}
