import type { CubicCurve, Point, Segment } from '../outline.js';
import { cross, distance, dot } from '../point.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { coefficients, parametric } from './parametric-curve.js';
import { quadraticRoots } from './polynomial-roots.js';
import { doublingBack } from './straight.js';

/**
 * A point where one segment crosses or runs back over itself, or undefined.
 * That it ends where it starts, as a whole circle does, is no crossing.
 */
export function ownCrossing(segment: Segment): Point | undefined {
  if (segment.kind !== 'quadratic' && segment.kind !== 'cubic') {
    return undefined;
  }
  const [back] = doublingBack(segment);
  const crossing = back ?? (segment.kind === 'cubic' ? loop(segment) : undefined);
  return crossing === undefined ? undefined : parametric(segment).at(crossing);
}

/**
 * The first of the two parameters at which a cubic passes one point. With u
 * and w for the two, and P(u) - P(w) divided by u - w,
 * cube (u^2 + u w + w^2) + square (u + w) + linear = 0 in both coordinates:
 * that gives the sum of u and w, and then their product.
 */
function loop(curve: CubicCurve): number | undefined {
  const { linear, square, cube } = coefficients(curve);
  const sum = -cross(cube, linear) / cross(cube, square);
  const squares = -(dot(cube, square) * sum + dot(cube, linear)) / dot(cube, cube);
  const product = sum * sum - squares;
  const roots = quadraticRoots(1, -sum, product);
  const [first, last] = [Math.min(...roots), Math.max(...roots)];
  const inside = roots.length === 2 && first >= 0 && last <= 1 && first < last;
  const { from, to } = curve;
  const { at } = parametric(curve);
  const closes =
    distance(at(first), from) <= LENGTH_TOLERANCE && distance(at(last), to) <= LENGTH_TOLERANCE;
  return inside && !closes ? first : undefined;
}
