import type { FlatPattern, Strip } from '@stripwright/strip-geometry';
import { shared } from '../drawing/box.js';
import { clipPolygon, clipStretch } from '../drawing/clip.js';
import type { Box, LineMark, Mark, PolygonMark } from '../drawing/drawing.js';
import { LINE_HEIGHT, shorten } from '../drawing/measure-text.js';
import { curveName } from '../report/mark-rows.js';
import { patternMarks } from '../strip-drawing/pattern-marks.js';
import { TAG_HEIGHT, tag, tagWidth } from '../strip-drawing/tag.js';
import { inMiddle } from './in-middle.js';
import { drawJoins } from './joins.js';
import { TYPE } from './page-format.js';

import { drawnBox, shownBox, toPage, type Window } from './window.js';

/** The flat pattern at true size, as much of it as belongs on a page, with names inside it. */
export function drawStripOnPage(
  strip: Strip,
  pattern: FlatPattern,
  window: Window,
): readonly Mark[] {
  const frame = drawnBox(strip, window);
  const drawn = patternMarks(strip, pattern, toPage(strip, window));
  return [
    ...drawn.flatMap((mark) => clipped(mark, frame)),
    ...curveTags(strip, window),
    ...seamNames(strip, window),
    ...drawJoins(strip, window),
  ];
}

/** What of a mark lies in a frame. A polygon's stroke is cut there, not led along the frame. */
function clipped(mark: LineMark | PolygonMark, frame: Box): readonly Mark[] {
  const { points, fill, ...pen } = mark;
  if (points.every((point) => clipStretch(point, point, frame) !== undefined)) return [mark];
  const closed = mark.kind === 'polygon';
  const kept = closed && fill !== undefined ? clipPolygon(points, frame) : [];
  const role = mark.role === undefined ? {} : { role: mark.role };
  const filled: Mark = { kind: 'polygon', ...role, points: kept, ...(fill ? { fill } : {}) };
  const stretches = points.flatMap((from, index) => {
    const to = points[index + 1] ?? (closed ? points[0] : undefined);
    const stretch = to === undefined ? undefined : clipStretch(from, to, frame);
    return stretch === undefined ? [] : [stretch];
  });
  return [
    ...(kept.length > 2 ? [filled] : []),
    ...(pen.stroke === undefined
      ? []
      : stretches.map((own): Mark => ({ ...pen, kind: 'line', points: own }))),
  ];
}

/** What the page shows of the wall between two places along the strip. */
function wallBetween(strip: Strip, window: Window, from: number, to: number): Box {
  const onPage = toPage(strip, window);
  const [one, other] = [onPage({ x: from, y: strip.width }), onPage({ x: to, y: strip.hem })];
  const wall = { x: one.x, y: one.y, width: other.x - one.x, height: other.y - one.y };
  return shared(wall, shownBox(window));
}

/** The names of the curves, where the page shows enough of them. */
function curveTags(strip: Strip, window: Window): readonly Mark[] {
  return strip.curves.flatMap(({ from, to, direction }, index) => {
    const label = curveName(index + 1);
    const { x, y, width, height } = wallBetween(strip, window, from, to);
    if (height < TAG_HEIGHT + 0.6 || width < tagWidth(label) + 0.6) return [];
    const middle = { x: x + width / 2, y: y + height / 2 };
    return tag('strip-curve', label, { of: 'curve', direction }, middle);
  });
}

/** What the ends are for, where there is room to say so beside the lines of the seam. */
function seamNames(strip: Strip, window: Window): readonly Mark[] {
  const { seam, tab, length } = strip;
  const lines = seam.lines.map(({ end, from }) => (end === 'start' ? from : length - from));
  const ends = [
    [0, seam.atStart],
    [length - tab, length],
  ] as const;
  return ends.flatMap(([from, to]) => {
    const stops = [from, ...lines.filter((line) => line > from && line < to), to];
    const boxes = stops
      .slice(1)
      .map((stop, index) => wallBetween(strip, window, stops[index] ?? from, stop))
      .sort((one, other) => other.height - one.height);
    const [box] = boxes;
    if (box === undefined || box.height < LINE_HEIGHT * TYPE.body) return [];
    const text = shorten(seam.name, box.width / TYPE.body);
    return text === '' ? [] : [inMiddle('seam-name', text, box)];
  });
}
