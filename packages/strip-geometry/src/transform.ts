import type { Outline, Point, Segment } from './outline.js';
import { turnedAbout } from './point.js';
import { reversedPath } from './segment.js';

const ORIGIN: Point = { x: 0, y: 0 };

function mapPoints(segment: Segment, map: (p: Point) => Point): Segment {
  const ends = { from: map(segment.from), to: map(segment.to) };
  switch (segment.kind) {
    case 'line':
      return { ...segment, ...ends };
    case 'arc':
    case 'elliptical arc':
      return { ...segment, ...ends, centre: map(segment.centre) };
    case 'quadratic':
      return { ...segment, ...ends, control: map(segment.control) };
    case 'cubic':
      return {
        ...segment,
        ...ends,
        control1: map(segment.control1),
        control2: map(segment.control2),
      };
  }
}

/** The path mirrored in the y axis and run backwards, so that its inside stays to the left. */
export function mirroredPath(path: readonly Segment[]): Segment[] {
  return reversedPath(path.map(mirrorImage));
}

function mirrorImage(segment: Segment): Segment {
  const image = mapPoints(segment, ({ x, y }) => ({ x: 0 - x, y }));
  switch (image.kind) {
    case 'arc':
      return { ...image, sweep: -image.sweep };
    case 'elliptical arc': {
      const { rotation, start, sweep } = image;
      return { ...image, rotation: -rotation, start: Math.PI - start, sweep: -sweep };
    }
    default:
      return image;
  }
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
  const segments = outline.segments.map((segment) => {
    const image = mapPoints(segment, (p) => turnedAbout(p, ORIGIN, angle));
    return image.kind === 'elliptical arc' ? { ...image, rotation: image.rotation + angle } : image;
  });
  return { ...outline, segments };
}

/** The outline enlarged about the origin by `factor`, above 0. */
export function scaled(outline: Outline, factor: number): Outline {
  const segments = outline.segments.map((segment) => {
    const image = mapPoints(segment, ({ x, y }) => ({ x: x * factor, y: y * factor }));
    if (image.kind !== 'elliptical arc') {
      return image;
    }
    const { radiusX, radiusY } = image;
    return { ...image, radiusX: radiusX * factor, radiusY: radiusY * factor };
  });
  return { ...outline, segments };
}
