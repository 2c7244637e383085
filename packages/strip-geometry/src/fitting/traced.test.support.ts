import { toDegrees } from '../angle.js';
import { perimeter } from '../measure.js';
import type { Outline, Point, Segment } from '../outline.js';
import { distance } from '../point.js';
import { lengthOf, line, pointAt, turnAtJoint } from '../segment.js';

/** The same numbers from 0 to 1 every time (the generator of Park and Miller, 1988). */
export function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

/** The points of a trace: the corners and points between, each off by up to `noise`. */
export function tracedPoints(
  outline: Outline,
  count: number,
  noise: number,
  seed: number,
): Point[] {
  const random = seededRandom(seed);
  const step = perimeter(outline) / count;
  return outline.segments.flatMap((segment) => {
    const length = lengthOf(segment);
    const parts = Math.max(Math.round(length / step), 1);
    return Array.from({ length: parts }, (_, part) => {
      const { x, y } = pointAt(segment, (length * part) / parts);
      const [away, angle] = [noise * random(), 2 * Math.PI * random()];
      return { x: x + away * Math.cos(angle), y: y + away * Math.sin(angle) };
    });
  });
}

export function polyline(points: readonly Point[]): Outline {
  const segments = points.map((from, index) =>
    line(from, points[(index + 1) % points.length] ?? from),
  );
  return { name: 'trace', segments };
}

export const traced = (outline: Outline, noise: number, seed = 1, count = 400) =>
  polyline(tracedPoints(outline, count, noise, seed));

/**
 * Measured apart from the fitting's own check: points a tenth of a millimetre
 * apart on one line, exact distances to every line and arc of the other.
 */
export function farthestFrom(a: Outline, b: Outline): number {
  let worst = 0;
  for (const segment of a.segments) {
    const parts = Math.ceil(lengthOf(segment) / 0.1);
    for (let part = 0; part <= parts; part++) {
      const p = pointAt(segment, (lengthOf(segment) * part) / parts);
      worst = Math.max(worst, Math.min(...b.segments.map((other) => distanceTo(other, p))));
    }
  }
  return worst;
}

function distanceTo(segment: Segment, p: Point): number {
  const { from, to } = segment;
  const ends = Math.min(distance(p, from), distance(p, to));
  if (segment.kind === 'line') {
    const [x, y] = [to.x - from.x, to.y - from.y];
    const share = ((p.x - from.x) * x + (p.y - from.y) * y) / (x * x + y * y);
    return share < 0 || share > 1
      ? ends
      : Math.abs((p.x - from.x) * y - (p.y - from.y) * x) / Math.hypot(x, y);
  }
  if (segment.kind !== 'arc') {
    throw new Error(`a fit has lines and arcs; got ${segment.kind}`);
  }
  const { centre, sweep } = segment;
  const angleTo = (q: Point) => Math.atan2(q.y - centre.y, q.x - centre.x);
  const turn = (Math.sign(sweep) * (angleTo(p) - angleTo(from))) / (2 * Math.PI);
  const swept = (turn - Math.floor(turn)) * 2 * Math.PI;
  return swept <= Math.abs(sweep) ? Math.abs(distance(p, centre) - distance(from, centre)) : ends;
}

export function corners(outline: Outline): { readonly at: Point; readonly turn: number }[] {
  const { segments } = outline;
  return segments
    .map((segment, index) => ({
      at: segment.to,
      turn: toDegrees(turnAtJoint(segment, segments[(index + 1) % segments.length] ?? segment)),
    }))
    .filter(({ turn }) => Math.abs(turn) > 0.01);
}
