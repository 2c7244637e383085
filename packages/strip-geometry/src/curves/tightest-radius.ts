import type { CubicCurve, QuadraticCurve, Segment } from '../outline.js';
import { dot } from '../point.js';
import { axialParameter, bendPolynomial, curvatureAt } from './curvature.js';
import { coefficients, endsOfAxes, parametric } from './parametric-curve.js';
import { signChanges } from './polynomial-roots.js';
import { doublingBack } from './straight.js';

/** A radius of a curve, millimetres, and the parameter at which it has it. */
export interface RadiusAt {
  readonly radius: number;
  readonly parameter: number;
}

/**
 * The tightest radius of the segment between two parameters: 0 at a cusp, where
 * it runs back over itself, and at an end whose control point lies on it;
 * infinite where it is straight.
 */
export function tightestBetween(segment: Segment, from: number, to: number): RadiusAt {
  const curve = parametric(segment);
  if (segment.kind === 'quadratic' || segment.kind === 'cubic') {
    const back = doublingBack(segment).find((parameter) => parameter > from && parameter < to);
    if (back !== undefined) {
      return { radius: 0, parameter: back };
    }
  }
  let tightest: RadiusAt = { radius: Infinity, parameter: from };
  for (const parameter of [from, ...turningPoints(segment, from, to), to]) {
    const radius = 1 / Math.abs(curvatureAt(curve, parameter));
    if (radius < tightest.radius) {
      tightest = { radius, parameter };
    }
  }
  return tightest;
}

/** Parameters strictly between two others where the curvature stops rising or falling. */
function turningPoints(segment: Segment, from: number, to: number): number[] {
  const isBetween = (parameter: number) => parameter > from && parameter < to;
  switch (segment.kind) {
    case 'line':
    case 'arc':
      return [];
    case 'elliptical arc':
      return endsOfAxes(segment.start, segment.sweep).filter(isBetween);
    default: {
      // The cusp is a double root of the slope besides, which rounding may hide.
      const cusp = [axialParameter(segment)].filter(isBetween);
      return [...signChanges(curvatureSlope(segment), from, to), ...cusp];
    }
  }
}

/**
 * A polynomial with the sign of the curvature's derivative. With N = velocity
 * cross acceleration and D = the squared speed the curvature is N / D^1.5, and
 * its derivative has the sign of N' D - 1.5 N D'.
 */
function curvatureSlope(curve: QuadraticCurve | CubicCurve): number[] {
  const { linear, square, cube } = coefficients(curve);
  const [n0, n1, n2] = bendPolynomial(curve);
  const d0 = dot(linear, linear);
  const d1 = 4 * dot(linear, square);
  const d2 = 4 * dot(square, square) + 6 * dot(linear, cube);
  const d3 = 12 * dot(square, cube);
  const d4 = 9 * dot(cube, cube);
  return [
    n1 * d0 - 1.5 * n0 * d1,
    2 * n2 * d0 - 0.5 * n1 * d1 - 3 * n0 * d2,
    0.5 * n2 * d1 - 2 * n1 * d2 - 4.5 * n0 * d3,
    -n2 * d2 - 3.5 * n1 * d3 - 6 * n0 * d4,
    -2.5 * n2 * d3 - 5 * n1 * d4,
    -4 * n2 * d4,
  ];
}
