import { integrate } from './gauss-legendre.js';
import type { ParametricCurve } from './parametric-curve.js';

/** What the integral of a stretch may be out by, as a part of the curve's size. */
const RELATIVE = 1e-13;

/**
 * Length along the curve between two parameters, millimetres; negative if `to`
 * comes first. Between its slowest and its fastest places the speed is smooth,
 * and nothing hides between the points of the rule.
 */
export function lengthBetween(curve: ParametricCurve, from: number, to: number): number {
  const tolerance = RELATIVE * greatestSpeed(curve);
  const [low, high] = from < to ? [from, to] : [to, from];
  let [at, length] = [low, 0];
  for (const stop of curve.paceChanges()) {
    if (stop > at && stop < high) {
      length += integrate(curve.speed, at, stop, tolerance);
      at = stop;
    }
  }
  length += integrate(curve.speed, at, high, tolerance);
  return from < to ? length : -length;
}

/** A measure of the curve's size that costs next to nothing and is 0 for no sound curve. */
function greatestSpeed({ speed }: ParametricCurve): number {
  return Math.max(speed(0), speed(0.25), speed(0.5), speed(0.75), speed(1));
}

/** As a part of the total length: near enough to a place that is looked for. */
const SETTLED = 1e-13;

/** Newton's method meets any parameter in far fewer steps, even where it must halve. */
const MOST_STEPS = 100;

/**
 * The parameter at which a curve of the given total length has been followed
 * for `along` millimetres: 0 for none or less, 1 for all or more. Newton's
 * method on the length, kept between bounds that close in.
 */
export function parameterAt(curve: ParametricCurve, along: number, total: number): number {
  if (!(along > 0)) {
    return 0;
  }
  if (along >= total) {
    return 1;
  }
  let [low, high] = [0, 1];
  let parameter = along / total;
  let length = lengthBetween(curve, 0, parameter);
  for (let step = 0; step < MOST_STEPS; step++) {
    const missing = along - length;
    if (missing > 0) {
      low = parameter;
    } else {
      high = parameter;
    }
    const aimed = parameter + missing / curve.speed(parameter);
    const next = aimed > low && aimed < high ? aimed : (low + high) / 2;
    // What a step of Newton's method leaves is about half the change of speed times the step.
    const change = curve.speed(next) - curve.speed(parameter);
    if (next === aimed && Math.abs(change * (next - parameter)) <= SETTLED * total) {
      return next;
    }
    if (Math.abs(missing) <= SETTLED * total || next === parameter) {
      return parameter;
    }
    length += lengthBetween(curve, parameter, next);
    parameter = next;
  }
  return parameter;
}
