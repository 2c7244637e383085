import type { Point } from '../outline.js';
import { minus } from '../point.js';
import { STILL } from './curvature.js';
import type { ParametricCurve } from './parametric-curve.js';

/**
 * Unit vector of the direction of travel at a parameter. Where the curve
 * stands still, as at an end whose control point lies on it or at a cusp, it
 * is the direction just `after`, or just `before`.
 */
export function directionAt(
  curve: ParametricCurve,
  parameter: number,
  side: 'before' | 'after' = parameter < 1 ? 'after' : 'before',
): Point {
  const velocity = curve.velocity(parameter);
  const acceleration = curve.acceleration(parameter);
  const [speed, rate] = [sizeOf(velocity), sizeOf(acceleration)];
  if (speed > STILL * rate) {
    return { x: velocity.x / speed, y: velocity.y / speed };
  }
  // The acceleration of a Bezier curve changes evenly. No other kind ever stands still.
  const jerk = minus(curve.acceleration(1), curve.acceleration(0));
  if (rate > STILL * sizeOf(jerk)) {
    // From a standstill it goes the way it is accelerated; it came from there too.
    const { x, y } = unit(acceleration);
    return side === 'after' ? { x, y } : { x: -x, y: -y };
  }
  return unit(jerk);
}

function sizeOf({ x, y }: Point): number {
  return Math.sqrt(x * x + y * y);
}

/** The vector at length 1. */
export function unit(vector: Point): Point {
  const size = Math.hypot(vector.x, vector.y);
  return { x: vector.x / size, y: vector.y / size };
}
