import type { CubicCurve, QuadraticCurve } from '../outline.js';
import { cross, dot } from '../point.js';
import { coefficients, type ParametricCurve } from './parametric-curve.js';

/** Radians turned for each millimetre travelled, positive to the left; infinite at a standstill. */
export function curvatureAt(curve: ParametricCurve, parameter: number): number {
  const velocity = curve.velocity(parameter);
  const bend = cross(velocity, curve.acceleration(parameter));
  const speed = Math.sqrt(dot(velocity, velocity));
  return speed === 0 ? (bend < 0 ? -Infinity : Infinity) : bend / speed ** 3;
}

/**
 * Half of velocity cross acceleration as a polynomial of the parameter, the
 * constant first: it has the sign of the curvature.
 */
export function bendPolynomial(curve: QuadraticCurve | CubicCurve): [number, number, number] {
  const { linear, square, cube } = coefficients(curve);
  return [cross(linear, square), 3 * cross(linear, cube), 3 * cross(square, cube)];
}
