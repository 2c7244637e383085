import type { CubicCurve, QuadraticCurve } from '../outline.js';
import { cross, dot } from '../point.js';
import { coefficients, type ParametricCurve } from './parametric-curve.js';

/** Speeds below this part of the rate at which they change count as standing still. */
export const STILL = 1e-12;

/** Radians turned for each millimetre travelled, positive to the left; infinite at a standstill. */
export function curvatureAt(curve: ParametricCurve, parameter: number): number {
  const velocity = curve.velocity(parameter);
  const acceleration = curve.acceleration(parameter);
  const bend = cross(velocity, acceleration);
  const speed = Math.sqrt(dot(velocity, velocity));
  if (speed <= STILL * Math.sqrt(dot(acceleration, acceleration))) {
    return bend < 0 ? -Infinity : Infinity;
  }
  return bend / speed ** 3;
}

/**
 * The parameter at which the velocity of a Bezier curve, which is a parabola
 * about the standstill point, crosses the line through that point along the
 * parabola's axis. A cusp can be nowhere else. Not finite where there is none.
 */
export function axialParameter(curve: QuadraticCurve | CubicCurve): number {
  const { linear, square, cube } = coefficients(curve);
  return -cross(cube, linear) / (2 * cross(cube, square));
}

/**
 * Half of velocity cross acceleration as a polynomial of the parameter, the
 * constant first: it has the sign of the curvature.
 */
export function bendPolynomial(curve: QuadraticCurve | CubicCurve): [number, number, number] {
  const { linear, square, cube } = coefficients(curve);
  return [cross(linear, square), 3 * cross(linear, cube), 3 * cross(square, cube)];
}
