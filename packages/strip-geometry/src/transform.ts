import type { Outline, Point, Segment } from './outline.js';
import { turnedAbout } from './point.js';
import { reversedPath } from './segment.js';

const ORIGIN: Point = { x: 0, y: 0 };

function mapPoints(segment: Segment, map: (p: Point) => Point): Segment {
  const ends = { from: map(segment.from), to: map(segment.to) };
  return segment.kind === 'line'
    ? { ...segment, ...ends }
    : { ...segment, ...ends, centre: map(segment.centre) };
}

/** The path mirrored in the y axis and run backwards, so that its inside stays to the left. */
export function mirroredPath(path: readonly Segment[]): Segment[] {
  const mirrored = path.map((segment): Segment => {
    const image = mapPoints(segment, ({ x, y }) => ({ x: 0 - x, y }));
    return image.kind === 'arc' ? { ...image, sweep: -image.sweep } : image;
  });
  return reversedPath(mirrored);
}

/** The outline mirrored in the y axis, still run anticlockwise. */
export function mirrored(outline: Outline): Outline {
  return { ...outline, segments: mirroredPath(outline.segments) };
}

/** The outline moved by a vector, millimetres. */
export function moved(outline: Outline, by: Point): Outline {
  const segments = outline.segments.map((segment) =>
    mapPoints(segment, ({ x, y }) => ({ x: x + by.x, y: y + by.y })),
  );
  return { ...outline, segments };
}

/** The outline turned about the origin by `angle` radians, anticlockwise. */
export function turned(outline: Outline, angle: number): Outline {
  const segments = outline.segments.map((segment) =>
    mapPoints(segment, (p) => turnedAbout(p, ORIGIN, angle)),
  );
  return { ...outline, segments };
}

/** The outline enlarged about the origin by `factor`, above 0. */
export function scaled(outline: Outline, factor: number): Outline {
  const segments = outline.segments.map((segment) =>
    mapPoints(segment, ({ x, y }) => ({ x: x * factor, y: y * factor })),
  );
  return { ...outline, segments };
}
