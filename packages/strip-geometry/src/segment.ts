import { FULL_TURN } from './angle.js';
import type { Arc, Line, Point, Segment } from './outline.js';
import { distance, leftOf, minus, turnedAbout, turnFrom } from './point.js';

/** A straight line. */
export function line(from: Point, to: Point): Line {
  return { kind: 'line', from, to };
}

/** The arc that starts at `from` and sweeps `sweep` radians about `centre`, positive anticlockwise. */
export function arc(from: Point, centre: Point, sweep: number): Arc {
  return { kind: 'arc', from, to: turnedAbout(from, centre, sweep), centre, sweep };
}

/**
 * The arc about `centre` from `from` to `to`, the short or the long way round
 * as `sense` asks. The points must be equally far from the centre.
 */
export function arcBetween(
  from: Point,
  to: Point,
  centre: Point,
  sense: 'anticlockwise' | 'clockwise',
): Arc {
  const shortest = turnFrom(minus(from, centre), minus(to, centre));
  const wrongWay = sense === 'anticlockwise' ? shortest < 0 : shortest > 0;
  const sweep = wrongWay ? shortest - Math.sign(shortest) * FULL_TURN : shortest;
  return { kind: 'arc', from, to, centre, sweep };
}

/** Radius of the arc, millimetres. */
export function radiusOf(segment: Arc): number {
  return distance(segment.from, segment.centre);
}

/** Length along the segment, millimetres. */
export function lengthOf(segment: Segment): number {
  return segment.kind === 'line'
    ? distance(segment.from, segment.to)
    : radiusOf(segment) * Math.abs(segment.sweep);
}

/** Unit vector of the direction in which the segment leaves its first point. */
export function headingAtStart(segment: Segment): Point {
  return headingAt(segment, segment.from);
}

/** Unit vector of the direction in which the segment arrives at its last point. */
export function headingAtEnd(segment: Segment): Point {
  return headingAt(segment, segment.to);
}

function headingAt(segment: Segment, at: Point): Point {
  if (segment.kind === 'line') {
    return unit(minus(segment.to, segment.from));
  }
  const outward = unit(minus(at, segment.centre));
  const anticlockwise = leftOf(outward);
  return segment.sweep > 0 ? anticlockwise : { x: -anticlockwise.x, y: -anticlockwise.y };
}

function unit(vector: Point): Point {
  const size = Math.hypot(vector.x, vector.y);
  return { x: vector.x / size, y: vector.y / size };
}

/**
 * The angle turned through at the joint where `after` follows `before`, in
 * radians, positive to the left, 0 where the joint is smooth.
 */
export function turnAtJoint(before: Segment, after: Segment): number {
  return turnFrom(headingAtEnd(before), headingAtStart(after));
}

/** The same segment run from its end to its start. */
export function reversed(segment: Segment): Segment {
  const { from, to } = segment;
  return segment.kind === 'line'
    ? { ...segment, from: to, to: from }
    : { ...segment, from: to, to: from, sweep: -segment.sweep };
}

/** The path run backwards. */
export function reversedPath(path: readonly Segment[]): Segment[] {
  return path.map(reversed).reverse();
}
