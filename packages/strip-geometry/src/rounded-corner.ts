import { toDegrees } from './angle.js';
import { BendError } from './bend-rules/bend-error.js';
import { type CarriedSegment, isCarried, meetings, shiftedCarrier } from './carrier.js';
import { type Touching, touchingArc } from './curves/touching-arc.js';
import { turnBetween } from './curves/turning.js';
import type { Point, Segment } from './outline.js';
import { distance, dot, minus, turnFrom } from './point.js';
import { headingAtStart, parameterOf, radiusOf, reversed, turnAtJoint } from './segment.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printNumber, printPoint } from './wording.js';

/** A sharp corner replaced by an arc that touches both of its segments. */
export interface RoundedCorner {
  /** Radians turned through by the arc, positive to the left. */
  readonly turn: number;
  /** How much it takes off the end of the segment before, millimetres along the segment. */
  readonly before: number;
  /** How much it takes off the start of the segment after. */
  readonly after: number;
}

/**
 * Rounds the corner where `after` follows `before` by an arc of `radius`, 0 or
 * more. Between straight lines this is the setback, radius * tan(turn / 2), at
 * either side. Beside a circular arc it is exact as well: the centre lies where
 * both segments, shifted by the radius toward the inside of the turn, meet.
 * Beside other curves the same place is found step by step, see `touchingArc`.
 * Then the part of a curve that is cut off no longer turns, and the rounded
 * corner turns by that much more or less than the sharp one did.
 *
 * @returns undefined where the joint is smooth.
 * @throws BendError where the corner folds straight back, or is so sharp
 * beside a curve that no such arc touches both segments.
 */
export function roundCorner(
  before: Segment,
  after: Segment,
  radius: number,
): RoundedCorner | undefined {
  const turn = turnAtJoint(before, after);
  const corner = after.from;
  if (Math.abs(turn) <= ANGLE_TOLERANCE) {
    return undefined;
  }
  if (Math.PI - Math.abs(turn) <= ANGLE_TOLERANCE) {
    const message =
      `The corner at ${printPoint(corner)} folds straight back, through 180 degrees; ` +
      'a corner must turn through less.';
    throw new BendError('folded flat', message);
  }
  if (radius === 0) {
    return { turn, before: 0, after: 0 };
  }
  if (before.kind === 'line' && after.kind === 'line') {
    const setback = radius * Math.tan(Math.abs(turn) / 2);
    return { turn, before: setback, after: setback };
  }
  const touching =
    isCarried(before) && isCarried(after)
      ? touchingOnCarriers(before, after, radius * Math.sign(turn), corner)
      : touchingArc(before, after, turn, radius);
  if (touching === undefined) {
    throw tooSharp(corner, turn, radius);
  }
  const { before: cutBefore, after: cutAfter } = touching;
  // Run backwards, a segment that turns left turns right.
  const rounded = turn - turning(reversed(before), cutBefore) + turning(after, cutAfter);
  const sameWay = rounded * Math.sign(turn);
  if (cutBefore < 0 || cutAfter < 0 || sameWay <= 0 || sameWay >= Math.PI) {
    throw tooSharp(corner, turn, radius);
  }
  return { turn: rounded, before: cutBefore, after: cutAfter };
}

/** Where an arc of a signed radius, above 0 to the left, touches two lines or circular arcs. */
function touchingOnCarriers(
  before: CarriedSegment,
  after: CarriedSegment,
  toInside: number,
  corner: Point,
): Touching | undefined {
  const centre = nearestMeeting(before, after, toInside, corner);
  return (
    centre && {
      before: overZero(-travelled(before, corner, centre)),
      after: overZero(travelled(after, corner, centre)),
    }
  );
}

function nearestMeeting(
  before: CarriedSegment,
  after: CarriedSegment,
  toInside: number,
  corner: Point,
): Point | undefined {
  const [first, second] = [shiftedCarrier(before, toInside), shiftedCarrier(after, toInside)];
  if (first === undefined || second === undefined) {
    return undefined;
  }
  const [nearest] = meetings(first, second).sort(
    (a, b) => distance(a, corner) - distance(b, corner),
  );
  return nearest;
}

/**
 * Distance along the segment's travel from the corner to the place nearest to
 * `centre`, where an arc about `centre` touches it. Negative if it lies back.
 */
function travelled(segment: CarriedSegment, corner: Point, centre: Point): number {
  if (segment.kind === 'line') {
    return dot(minus(centre, corner), headingAtStart(segment));
  }
  const angle = turnFrom(minus(corner, segment.centre), minus(centre, segment.centre));
  return Math.sign(segment.sweep) * angle * radiusOf(segment);
}

/** The length, or 0 where it is below 0 only by rounding. */
function overZero(length: number): number {
  return length < 0 && length >= -LENGTH_TOLERANCE ? 0 : length;
}

/** Radians that a segment turns through in its first `length` millimetres, to the left. */
function turning(segment: Segment, length: number): number {
  return turnBetween(segment, 0, parameterOf(segment, length));
}

function tooSharp(corner: Point, turn: number, radius: number): BendError {
  const degrees = printNumber(toDegrees(Math.abs(turn)));
  const message =
    `The corner at ${printPoint(corner)} turns through ${degrees} degrees beside a curve, too ` +
    `sharp for a bend of radius ${printLength(radius)} to touch both sides; open the corner, ` +
    'make the outline larger, or bend it with a smaller radius.';
  return new BendError('too sharp', message);
}
