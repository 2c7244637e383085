import type { CubicCurve, Point, QuadraticCurve, Segment } from '../outline.js';
import { cross, distance, dot, minus } from '../point.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { coefficients } from './parametric-curve.js';
import { signChanges } from './polynomial-roots.js';

/** Whether the segment is a straight line, however it is written. */
export function isStraight(segment: Segment): boolean {
  switch (segment.kind) {
    case 'line':
      return true;
    case 'arc':
    case 'elliptical arc':
      return false;
    default:
      return isFlat(segment) && turningBack(segment).length === 0;
  }
}

/**
 * Parameters where a Bezier curve with all its points on one line turns round
 * and runs back over itself; none for any other curve.
 */
export function doublingBack(curve: QuadraticCurve | CubicCurve): number[] {
  return isFlat(curve) ? turningBack(curve) : [];
}

/** Whether all points of the curve lie on one line within the tolerance. */
function isFlat(curve: QuadraticCurve | CubicCurve): boolean {
  const { from } = curve;
  const farthest = farthestFrom(from, others(curve));
  const reach = distance(from, farthest);
  const axis = minus(farthest, from);
  return others(curve).every(
    (point) => Math.abs(cross(axis, minus(point, from))) <= LENGTH_TOLERANCE * reach,
  );
}

/**
 * Parameters where a curve on one line turns round, none if it runs back by
 * less than the tolerance in all.
 */
function turningBack(curve: QuadraticCurve | CubicCurve): number[] {
  const axis = minus(farthestFrom(curve.from, others(curve)), curve.from);
  const { linear, square, cube } = coefficients(curve);
  const [a, b, c] = [dot(linear, axis), dot(square, axis), dot(cube, axis)];
  const turns = signChanges([a, 2 * b, 3 * c], 0, 1);
  if (turns.length === 0) {
    return turns;
  }
  const reach = (u: number) => (u * (a + u * (b + u * c))) / Math.hypot(axis.x, axis.y);
  const stops = [...turns, 1].map(reach);
  const walked = stops.reduce(
    (sum, stop, index) => sum + Math.abs(stop - (stops[index - 1] ?? 0)),
    0,
  );
  return walked - Math.abs(reach(1)) > LENGTH_TOLERANCE ? turns : [];
}

function others(curve: QuadraticCurve | CubicCurve): Point[] {
  return curve.kind === 'quadratic'
    ? [curve.control, curve.to]
    : [curve.control1, curve.control2, curve.to];
}

function farthestFrom(from: Point, points: readonly Point[]): Point {
  return points.reduce((far, point) => (distance(from, point) > distance(from, far) ? point : far));
}
