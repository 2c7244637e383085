import fc from 'fast-check';
import { between } from './any-outline.test.support.js';
import type { Outline, Point, Segment } from './outline.js';
import { distance, point, polar } from './point.js';
import { arc, cubic, ellipticalArc, line, quadratic } from './segment.js';

const anyPoint: fc.Arbitrary<Point> = fc.record({ x: between(-50, 50), y: between(-50, 50) });

/** Control points that all but touch an end are noise, which has its own tests. */
function apart(a: Point, b: Point, least = 0.01): boolean {
  return distance(a, b) > least;
}

export const anyLine: fc.Arbitrary<Segment> = fc
  .tuple(anyPoint, anyPoint)
  .filter(([from, to]) => distance(from, to) > 0.1)
  .map(([from, to]) => line(from, to));

export const anyArc: fc.Arbitrary<Segment> = fc
  .tuple(anyPoint, between(0.5, 50), between(-4, 4), between(0.01, 6), fc.boolean())
  .map(([centre, radius, start, sweep, left]) =>
    arc(polar(centre, radius, start), centre, left ? sweep : -sweep),
  );

export const anyQuadratic: fc.Arbitrary<Segment> = fc
  .tuple(anyPoint, anyPoint, anyPoint)
  .filter(
    ([from, control, to]) => apart(from, to, 0.1) && apart(from, control) && apart(control, to),
  )
  .map(([from, control, to]) => quadratic(from, control, to));

export const anyCubic: fc.Arbitrary<Segment> = fc
  .tuple(anyPoint, anyPoint, anyPoint, anyPoint, fc.nat(5))
  .filter(
    ([from, control1, control2, to]) =>
      apart(from, to, 0.1) &&
      apart(from, control1) &&
      apart(control2, to) &&
      apart(control1, to) &&
      apart(control2, from),
  )
  .map(([from, control1, control2, to, shape]) => {
    // A third have a handle drawn in, as drawings often do.
    const first = shape === 0 ? from : control1;
    return cubic(from, first, shape === 1 ? to : control2, to);
  });

export const anyEllipticalArc: fc.Arbitrary<Segment> = fc
  .record({
    centre: anyPoint,
    radiusX: between(0.5, 50),
    radiusY: between(0.5, 50),
    rotation: between(-4, 4),
    start: between(-7, 7),
    size: between(0.01, 2 * Math.PI),
    left: fc.boolean(),
  })
  .map(({ size, left, ...rest }) => ellipticalArc({ ...rest, sweep: left ? size : -size }));

export const anyCurve: fc.Arbitrary<Segment> = fc.oneof(anyQuadratic, anyCubic, anyEllipticalArc);

export const anySegment: fc.Arbitrary<Segment> = fc.oneof(anyLine, anyArc, anyCurve);

/**
 * A point of a segment by the definition of its kind alone: de Casteljau's
 * rule, or the angle of the ellipse. The share runs from 0 to 1.
 */
export function pointByDefinition(segment: Segment, share: number): Point {
  switch (segment.kind) {
    case 'line':
      return partway(segment.from, segment.to, share);
    case 'arc': {
      const { from, centre, sweep } = segment;
      const start = Math.atan2(from.y - centre.y, from.x - centre.x);
      return polar(centre, distance(from, centre), start + share * sweep);
    }
    case 'elliptical arc': {
      const { centre, radiusX, radiusY, rotation, start, sweep } = segment;
      const t = start + share * sweep;
      const [x, y] = [radiusX * Math.cos(t), radiusY * Math.sin(t)];
      return point(
        centre.x + x * Math.cos(rotation) - y * Math.sin(rotation),
        centre.y + x * Math.sin(rotation) + y * Math.cos(rotation),
      );
    }
    case 'quadratic':
      return casteljau([segment.from, segment.control, segment.to], share);
    case 'cubic':
      return casteljau([segment.from, segment.control1, segment.control2, segment.to], share);
  }
}

function partway(a: Point, b: Point, share: number): Point {
  return point(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
}

function casteljau(points: readonly Point[], share: number): Point {
  const [first, ...others] = points;
  if (first === undefined || others.length === 0) {
    return first ?? point(Number.NaN, Number.NaN);
  }
  return casteljau(
    others.map((next, index) => partway(points[index] ?? next, next, share)),
    share,
  );
}

/** Points along the segment, both ends included, by its definition. */
export function sampled(segment: Segment, steps: number): Point[] {
  return Array.from({ length: steps + 1 }, (_, step) => pointByDefinition(segment, step / steps));
}

/** A smooth closed outline of cubics, round the origin; most have hollows. */
export const anySmoothOutline: fc.Arbitrary<Outline> = fc
  .array(between(20, 40), { minLength: 5, maxLength: 12 })
  .map((radii) => {
    const corners = radii.map((radius, index) =>
      polar(point(0, 0), radius, (2 * Math.PI * index) / radii.length),
    );
    const at = (index: number) => corners[(index + corners.length) % corners.length] ?? point(0, 0);
    // Each joint is passed in the direction from the corner before it to the one after.
    const handle = (index: number) =>
      point((at(index + 1).x - at(index - 1).x) / 6, (at(index + 1).y - at(index - 1).y) / 6);
    const segments = corners.map((from, index) => {
      const [to, leave, arrive] = [at(index + 1), handle(index), handle(index + 1)];
      const control1 = point(from.x + leave.x, from.y + leave.y);
      return cubic(from, control1, point(to.x - arrive.x, to.y - arrive.y), to);
    });
    return { name: 'smooth', segments };
  });

/** An ellipse, whole or in a few arcs. */
export const anyEllipse: fc.Arbitrary<Outline> = fc
  .record({
    radiusX: between(15, 60),
    flat: between(0.3, 1),
    rotation: between(-4, 4),
    parts: fc.integer({ min: 1, max: 5 }),
  })
  .map(({ radiusX, flat, rotation, parts }) => {
    const sizes = { centre: point(3, -2), radiusX, radiusY: radiusX * flat, rotation };
    const sweep = (2 * Math.PI) / parts;
    const segments = Array.from({ length: parts }, (_, part) =>
      ellipticalArc({ ...sizes, start: part * sweep, sweep }),
    );
    return { name: 'ellipse', segments };
  });
