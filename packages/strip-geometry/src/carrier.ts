import type { Arc, Line, Point, Segment } from './outline.js';
import { along, cross, distance, dot, leftOf, minus } from './point.js';
import { headingAtStart, radiusOf } from './segment.js';

/** The endless line that a straight segment lies on. */
export interface EndlessLine {
  readonly kind: 'line';
  readonly through: Point;
  /** Unit vector. */
  readonly heading: Point;
}

/** The whole circle that an arc lies on. */
export interface Circle {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
}

export type Carrier = EndlessLine | Circle;

/** A segment that is part of an endless line or of a circle. */
export type CarriedSegment = Line | Arc;

/** Whether the segment is part of an endless line or of a circle. */
export function isCarried(segment: Segment): segment is CarriedSegment {
  return segment.kind === 'line' || segment.kind === 'arc';
}

/**
 * What a segment lies on, shifted to the left of its travel by `by` (to the
 * right if negative). Undefined where an arc is too small to be shifted so far.
 */
export function shiftedCarrier(segment: CarriedSegment, by: number): Carrier | undefined {
  if (segment.kind === 'line') {
    const heading = headingAtStart(segment);
    return { kind: 'line', through: along(segment.from, leftOf(heading), by), heading };
  }
  const radius = radiusOf(segment) - Math.sign(segment.sweep) * by;
  return radius > 0 ? { kind: 'circle', centre: segment.centre, radius } : undefined;
}

/** The points that two carriers share: none, one or two. */
export function meetings(a: Carrier, b: Carrier): Point[] {
  if (a.kind === 'line') {
    return b.kind === 'line' ? lineMeetsLine(a, b) : lineMeetsCircle(a, b);
  }
  return b.kind === 'line' ? lineMeetsCircle(b, a) : circleMeetsCircle(a, b);
}

function lineMeetsLine(a: EndlessLine, b: EndlessLine): Point[] {
  const sine = cross(a.heading, b.heading);
  if (sine === 0) {
    return [];
  }
  return [along(a.through, a.heading, cross(minus(b.through, a.through), b.heading) / sine)];
}

function lineMeetsCircle(line: EndlessLine, circle: Circle): Point[] {
  const toCentre = minus(circle.centre, line.through);
  const nearest = along(line.through, line.heading, dot(toCentre, line.heading));
  return eitherSide(nearest, line.heading, circle.radius, Math.abs(cross(line.heading, toCentre)));
}

function circleMeetsCircle(a: Circle, b: Circle): Point[] {
  const apart = distance(a.centre, b.centre);
  if (apart === 0) {
    return [];
  }
  const towards = {
    x: (b.centre.x - a.centre.x) / apart,
    y: (b.centre.y - a.centre.y) / apart,
  };
  // The common chord is square to the line of centres, this far along it.
  const reach = (apart + ((a.radius - b.radius) * (a.radius + b.radius)) / apart) / 2;
  const foot = along(a.centre, towards, reach);
  return eitherSide(foot, leftOf(towards), a.radius, Math.abs(reach));
}

/** The ends of the chord that lies `offset` from the centre of a circle. */
function eitherSide(foot: Point, heading: Point, radius: number, offset: number): Point[] {
  const squared = (radius - offset) * (radius + offset);
  if (squared < 0) {
    return [];
  }
  const half = Math.sqrt(squared);
  return half === 0 ? [foot] : [along(foot, heading, half), along(foot, heading, -half)];
}
