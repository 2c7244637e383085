import type { Point, Segment } from '../outline.js';
import { along, cross, leftOf } from '../point.js';
import { headingAtEnd, lengthOf, reversed } from '../segment.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { parameterAt } from './arc-length.js';
import { curvatureAt } from './curvature.js';
import { directionAt } from './heading.js';
import { parametric } from './parametric-curve.js';

/** Where an arc touches the sides of a corner, millimetres from the corner along each. */
export interface Touching {
  readonly before: number;
  readonly after: number;
}

/** What one finds some way along a side, going away from the corner. */
interface Place {
  readonly at: Point;
  readonly heading: Point;
  readonly curvature: number;
}

/** A side of a corner as a function of the distance from it. */
type Side = (distance: number) => Place;

/** The arc grows to its radius in this many steps where it is not found at once. */
const GROWTH_STEPS = 32;

/**
 * The arc of `radius`, above 0, that touches both sides of the corner where
 * `after` follows `before`, or undefined if there is none. `turn` is the
 * corner's own in radians, neither 0 nor a half turn. The arc's centre lies
 * `radius` from both sides on the inside of the corner: two equations for the
 * two distances, solved by Newton's method. Of several such arcs it is the one
 * that grows from the corner as the radius grows from 0. A side is taken to go
 * on straight beyond its far end.
 */
export function touchingArc(
  before: Segment,
  after: Segment,
  turn: number,
  radius: number,
): Touching | undefined {
  const sides = [sideFrom(reversed(before)), sideFrom(after)] as const;
  const towards = Math.sign(turn);
  const setback = radius * Math.tan(Math.abs(turn) / 2);
  const guess = { before: setback, after: setback };
  const direct = solve(...sides, towards * radius, guess);
  if (direct !== undefined && isNear(direct, guess)) {
    return direct;
  }
  let grown: Touching = { before: setback / GROWTH_STEPS, after: setback / GROWTH_STEPS };
  for (let step = 1; step <= GROWTH_STEPS; step++) {
    const growth = step === 1 ? 1 : step / (step - 1);
    const aim = { before: grown.before * growth, after: grown.after * growth };
    const found = solve(...sides, (towards * radius * step) / GROWTH_STEPS, aim);
    if (found === undefined || !isNear(found, aim)) {
      return undefined;
    }
    grown = found;
  }
  return grown;
}

/** Whether each distance is within half of what it was aimed at. */
function isNear(found: Touching, aim: Touching): boolean {
  return (
    Math.abs(found.before - aim.before) <= aim.before / 2 &&
    Math.abs(found.after - aim.after) <= aim.after / 2
  );
}

const MOST_STEPS = 30;

/** Newton's method from a guess; the radius is positive where the corner turns left. */
function solve(
  sideBefore: Side,
  sideAfter: Side,
  radius: number,
  guess: Touching,
): Touching | undefined {
  let { before, after } = guess;
  for (let step = 0; step < MOST_STEPS; step++) {
    const a = sideBefore(before);
    const b = sideAfter(after);
    // Left of the travel is right of the way back from the corner.
    const centre = along(a.at, leftOf(a.heading), -radius);
    const other = along(b.at, leftOf(b.heading), radius);
    const miss = { x: centre.x - other.x, y: centre.y - other.y };
    // How fast either centre moves as its distance grows; below 0 the arc is wider than the side.
    const [rateBefore, rateAfter] = [1 + radius * a.curvature, 1 - radius * b.curvature];
    const sine = cross(a.heading, b.heading);
    const stepBefore = -cross(miss, b.heading) / (rateBefore * sine);
    const stepAfter = cross(a.heading, miss) / (rateAfter * sine);
    before += stepBefore;
    after += stepAfter;
    if (!(Number.isFinite(before) && Number.isFinite(after))) {
      return undefined;
    }
    if (Math.abs(stepBefore) + Math.abs(stepAfter) <= SETTLED) {
      // The way back, then the way on: these turn right where the corner turns left.
      const turnsAsDrawn = sine * radius < 0;
      const isTouching = rateBefore > 0 && rateAfter > 0 && before > 0 && after > 0;
      return isTouching && turnsAsDrawn ? { before, after } : undefined;
    }
  }
  return undefined;
}

/** Newton's method has settled when its steps are this short. */
const SETTLED = LENGTH_TOLERANCE * 1e-4;

function sideFrom(segment: Segment): Side {
  const curve = parametric(segment);
  const length = lengthOf(segment);
  return (distance) => {
    if (distance > length) {
      const heading = headingAtEnd(segment);
      return { at: along(segment.to, heading, distance - length), heading, curvature: 0 };
    }
    const parameter = parameterAt(curve, distance, length);
    return {
      at: curve.at(parameter),
      heading: directionAt(curve, parameter),
      curvature: curvatureAt(curve, parameter),
    };
  };
}
