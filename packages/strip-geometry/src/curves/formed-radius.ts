import type { Segment } from '../outline.js';
import { SLIGHT_TURN } from '../tolerance.js';
import { curvatureAt } from './curvature.js';
import { type ParametricCurve, parametric } from './parametric-curve.js';
import { type RadiusAt, tightestBetween } from './tightest-radius.js';
import { turnBetween } from './turning.js';

/**
 * The tightest radius that metal is formed to along part of a segment that
 * bends one way, millimetres. It is the tightest radius of the drawn line,
 * except where that is at an end and gone after a slight turn: there the
 * drawing has a control point on the end of the curve, or all but on it, which
 * makes the radius 0 at a point and hardly turns the line.
 */
export function formedRadius(segment: Segment, from: number, to: number): RadiusAt {
  const curve = parametric(segment);
  const first = pastFlaw(segment, curve, from, to);
  return tightestBetween(segment, first, pastFlaw(segment, curve, to, from));
}

/** How much of a part is looked at first to see that its end is as round as the rest. */
const GLANCE = 1 / 8;

const HALVINGS = 40;

/** Where a part begins or ends, once a flaw at its end is left out. */
function pastFlaw(segment: Segment, curve: ParametricCurve, end: number, other: number): number {
  const radiusAt = (parameter: number) => 1 / Math.abs(curvatureAt(curve, parameter));

  const twice = 2 * radiusAt(end);
  if (radiusAt(end + GLANCE * (other - end)) <= twice) {
    return end;
  }
  const past = pastSlightTurn(segment, end, other);
  return radiusAt(past) > twice ? past : end;
}

/** The parameter at which the line has turned slightly from an end. */
function pastSlightTurn(segment: Segment, end: number, other: number): number {
  const whole = Math.abs(turnBetween(segment, end, other));
  const slight = Math.min(SLIGHT_TURN, whole / 4);
  let [near, far] = [end, other];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (near + far) / 2;
    if (Math.abs(turnBetween(segment, end, middle)) < slight) {
      near = middle;
    } else {
      far = middle;
    }
  }
  return far;
}
