import { BendError } from './bend-rules/bend-error.js';
import { formedRadius } from './curves/formed-radius.js';
import { oneWayParts, type Part } from './curves/one-way.js';
import { parametric } from './curves/parametric-curve.js';
import { isStraight } from './curves/straight.js';
import { turnBetween } from './curves/turning.js';
import type { Point, Segment } from './outline.js';
import { radiusOf } from './segment.js';
import type { TakenTurn } from './smooth-joints.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printPoint } from './wording.js';

/** A segment of a path, counted from 1. */
export interface NumberedSegment {
  readonly segment: Segment;
  readonly number: number;
}

/** A stretch of a segment that stays straight or is formed one way. */
export interface FormedStretch {
  /** Millimetres along the segment. */
  readonly start: number;
  readonly end: number;
  /** Radians, positive to the left, 0 where it stays straight. */
  readonly turn: number;
  /** Tightest radius of the drawn line, millimetres. */
  readonly radius: number;
  /** Whether it has that radius all along. */
  readonly even: boolean;
  readonly tightestAt: Point;
}

/**
 * Divides part of a segment into stretches that stay straight or bend one way.
 * What the segment takes over from smooth joints is turned by the stretch at
 * that end; a straight line that takes over a turn becomes an even, gentle curve.
 *
 * @throws BendError where the curve comes to a point.
 */
export function formedStretches(
  where: NumberedSegment,
  part: Part,
  { atStart, atEnd }: TakenTurn = { atStart: 0, atEnd: 0 },
): FormedStretch[] {
  const { segment } = where;
  if (isStraight(segment)) {
    const { start, end } = part;
    const turn = ignoreNoise(atStart + atEnd);
    const radius = (end - start) / Math.abs(turn);
    return [{ start, end, turn, radius, even: true, tightestAt: segment.from }];
  }
  const parts = oneWayParts(segment, part, LENGTH_TOLERANCE);
  return parts.map(({ from, to, start, end }, index) => {
    const own = turnBetween(segment, from, to);
    const taken = (index === 0 ? atStart : 0) + (index === parts.length - 1 ? atEnd : 0);
    const { radius, tightestAt } = tightest(where, from, to);
    const even = segment.kind === 'arc' && taken === 0;
    return { start, end, turn: ignoreNoise(own + taken), radius, even, tightestAt };
  });
}

function ignoreNoise(turn: number): number {
  return Math.abs(turn) <= ANGLE_TOLERANCE ? 0 : turn;
}

function tightest(
  where: NumberedSegment,
  from: number,
  to: number,
): { radius: number; tightestAt: Point } {
  const { segment } = where;
  if (segment.kind === 'arc') {
    return { radius: radiusOf(segment), tightestAt: segment.from };
  }
  const { radius, parameter } = formedRadius(segment, from, to);
  const tightestAt = parametric(segment).at(parameter);
  if (radius <= LENGTH_TOLERANCE) {
    const message =
      `${nameOf(where)}, comes to a point at ${printPoint(tightestAt)}, where it turns back; ` +
      'divide it there, so that the point is a corner between two segments, and open that corner.';
    throw new BendError('too tight', message);
  }
  return { radius, tightestAt };
}

/** How messages name a segment. */
export function nameOf({ segment, number }: NumberedSegment): string {
  const kind = isStraight(segment) ? 'flat' : 'curve';
  return `Segment ${number}, the ${kind} from ${printPoint(segment.from)} to ${printPoint(segment.to)}`;
}
