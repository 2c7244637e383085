import { FULL_TURN } from './angle.js';
import { lengthBetween, parameterAt } from './curves/arc-length.js';

import { directionAt, unit } from './curves/heading.js';
import { knownLength, parametric } from './curves/parametric-curve.js';
import { isStraight } from './curves/straight.js';
import { tightestBetween } from './curves/tightest-radius.js';
import { turnBetween } from './curves/turning.js';
import type {
  Arc,
  CubicCurve,
  EllipticalArc,
  Line,
  Point,
  QuadraticCurve,
  Segment,
} from './outline.js';
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

/** The quadratic Bezier curve with one control point. */
export function quadratic(from: Point, control: Point, to: Point): QuadraticCurve {
  return { kind: 'quadratic', from, control, to };
}

/** The cubic Bezier curve with two control points. */
export function cubic(from: Point, control1: Point, control2: Point, to: Point): CubicCurve {
  return { kind: 'cubic', from, control1, control2, to };
}

/**
 * Part of an ellipse, see `EllipticalArc`; the ends follow from the rest. The
 * whole ellipse, with a sweep of a full turn either way, ends where it starts.
 */
export function ellipticalArc(part: Omit<EllipticalArc, 'kind' | 'from' | 'to'>): EllipticalArc {
  const whole = { kind: 'elliptical arc', ...part, from: part.centre, to: part.centre } as const;
  const { at } = parametric(whole);
  const from = at(0);
  return { ...whole, from, to: Math.abs(part.sweep) === FULL_TURN ? from : at(1) };
}

/** Radius of the arc, millimetres. */
export function radiusOf(segment: Arc): number {
  return distance(segment.from, segment.centre);
}

/**
 * Length along the segment, millimetres: exact for lines and arcs, to a part
 * in 10^9 or better for the other kinds.
 */
export function lengthOf(segment: Segment): number {
  switch (segment.kind) {
    case 'line':
      return distance(segment.from, segment.to);
    case 'arc':
      return radiusOf(segment) * Math.abs(segment.sweep);
    default:
      return knownLength(segment, (curve) => lengthBetween(curve, 0, 1));
  }
}

/** Unit vector of the direction in which the segment leaves its first point. */
export function headingAtStart(segment: Segment): Point {
  return segment.kind === 'line' || segment.kind === 'arc'
    ? exactHeading(segment, segment.from)
    : directionAt(parametric(segment), 0);
}

/** Unit vector of the direction in which the segment arrives at its last point. */
export function headingAtEnd(segment: Segment): Point {
  return segment.kind === 'line' || segment.kind === 'arc'
    ? exactHeading(segment, segment.to)
    : directionAt(parametric(segment), 1);
}

/** Unit vector of the direction of travel `along` millimetres from the segment's start. */
export function headingAt(segment: Segment, along: number): Point {
  return directionAt(parametric(segment), parameterOf(segment, along));
}

/** The point `along` millimetres from the segment's start; its end where that is too far. */
export function pointAt(segment: Segment, along: number): Point {
  const parameter = parameterOf(segment, along);
  if (parameter === 0 || parameter === 1) {
    return parameter === 0 ? segment.from : segment.to;
  }
  return parametric(segment).at(parameter);
}

/** The parameter, from 0 to 1, at which the segment has been followed for `along` millimetres. */
export function parameterOf(segment: Segment, along: number): number {
  const length = lengthOf(segment);
  return segment.kind === 'line' || segment.kind === 'arc'
    ? Math.min(Math.max(along / length, 0), 1)
    : parameterAt(parametric(segment), along, length);
}

/**
 * Radians turned through from the segment's start to its end, positive to the
 * left, counted on past a half turn.
 */
export function totalTurn(segment: Segment): number {
  return turnBetween(segment, 0, 1);
}

/**
 * The segment's tightest radius, millimetres: infinite for a line, 0 where it
 * comes to a standstill, as at a cusp or at an end with its control point on it.
 */
export function tightestRadius(segment: Segment): number {
  switch (segment.kind) {
    case 'line':
      return Infinity;
    case 'arc':
      return radiusOf(segment);
    default:
      return isStraight(segment) ? Infinity : tightestBetween(segment, 0, 1).radius;
  }
}

function exactHeading(segment: Line | Arc, at: Point): Point {
  if (segment.kind === 'line') {
    return unit(minus(segment.to, segment.from));
  }
  const outward = unit(minus(at, segment.centre));
  const anticlockwise = leftOf(outward);
  return segment.sweep > 0 ? anticlockwise : { x: -anticlockwise.x, y: -anticlockwise.y };
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
  const ends = { from: segment.to, to: segment.from };
  switch (segment.kind) {
    case 'line':
    case 'quadratic':
      return { ...segment, ...ends };
    case 'arc':
      return { ...segment, ...ends, sweep: -segment.sweep };
    case 'cubic':
      return { ...segment, ...ends, control1: segment.control2, control2: segment.control1 };
    case 'elliptical arc': {
      const { start, sweep } = segment;
      return { ...segment, ...ends, start: start + sweep, sweep: -sweep };
    }
  }
}

/** The path run backwards. */
export function reversedPath(path: readonly Segment[]): Segment[] {
  return path.map(reversed).reverse();
}
