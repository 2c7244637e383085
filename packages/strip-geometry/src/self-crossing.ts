import { sharedPoint } from './crossing.js';
import { type Box, overlappingPairs } from './curves/box-tree.js';
import { extremes } from './curves/extremes.js';
import { type CurvePart, meetingPoint, wholeOf } from './curves/meeting.js';
import { ownCrossing } from './curves/own-crossing.js';
import type { Point, Segment } from './outline.js';
import { OutlineError } from './outline-error.js';
import { distance } from './point.js';
import { LENGTH_TOLERANCE } from './tolerance.js';

/** Where a closed path touches or crosses itself; segments by their index, the lower one first. */
export interface SelfCrossing {
  readonly first: number;
  /** The same as `first` where a segment crosses itself. */
  readonly second: number;
  readonly at: Point;
}

/**
 * The first place where a closed path touches or crosses itself, apart from
 * the joints of neighbours, or undefined. Neighbours may come together only
 * within `NEAR_JOINT` of their joint.
 *
 * @throws OutlineError `out of range` where too many segments run side by side to look at each pair.
 */
export function selfCrossing(segments: readonly Segment[]): SelfCrossing | undefined {
  for (const [index, segment] of segments.entries()) {
    const at = ownCrossing(segment);
    if (at !== undefined) {
      return { first: index, second: index, at };
    }
  }
  let found: SelfCrossing | undefined;
  let left = PAIRS_EACH * segments.length + PAIRS_MORE;
  overlappingPairs(segments.map(boxOf), (first, second) => {
    left -= 1;
    if (left < 0) {
      throw tooDense(segments.length);
    }
    const isEarlier =
      found === undefined ||
      first < found.first ||
      (first === found.first && second < found.second);
    const [a, b] = [segments[first], segments[second]];
    if (isEarlier && a !== undefined && b !== undefined) {
      const at = meeting(a, b, second === first + 1, isLast(first, second, segments));
      found = at === undefined ? found : { first, second, at };
    }
  });
  return found;
}

/**
 * Pairs of segments near each other that are looked at: so many for each
 * segment, and more. Far above what an outline of a cutter has, and low enough
 * that one made to do harm is refused at once.
 */
const PAIRS_EACH = 40;
const PAIRS_MORE = 10_000;

function tooDense(count: number): OutlineError {
  const message =
    `Many of the ${count} segments of the outline run side by side so close that whether they ` +
    'cross cannot be told; draw it with fewer.';
  return new OutlineError('out of range', message);
}

/** Whether the second joins the first at the path's closing. */
function isLast(first: number, second: number, { length }: readonly Segment[]): boolean {
  return first === 0 && second === length - 1;
}

function meeting(a: Segment, b: Segment, follows: boolean, closes: boolean): Point | undefined {
  if (!follows && !closes) {
    return sharedPoint(a, b);
  }
  if (a.kind === 'line' && b.kind === 'line') {
    // They have met at their joint already.
    return undefined;
  }
  const [whole, other] = [wholeOf(a), wholeOf(b)];
  const trimmed = {
    ...whole,
    from: closes ? pastStart(whole) : 0,
    to: follows ? beforeEnd(whole) : 1,
  };
  const otherTrimmed = {
    ...other,
    from: follows ? pastStart(other) : 0,
    to: closes ? beforeEnd(other) : 1,
  };
  return meetingOf(trimmed, other) ?? meetingOf(whole, otherTrimmed);
}

function meetingOf(a: CurvePart, b: CurvePart): Point | undefined {
  return a.from < a.to && b.from < b.to ? meetingPoint(a, b) : undefined;
}

/** Neighbours may come together where both are this near to their joint, millimetres. */
const NEAR_JOINT = 0.1;

/** A parameter that lies about `NEAR_JOINT` or more past the start, at most halfway. */
function pastStart({ curve }: CurvePart): number {
  return stepAway(curve.at(0), curve.speed(0), (step) => curve.at(step));
}

function beforeEnd({ curve }: CurvePart): number {
  return 1 - stepAway(curve.at(1), curve.speed(1), (step) => curve.at(1 - step));
}

function stepAway(joint: Point, speed: number, at: (step: number) => Point): number {
  let step = Math.min(NEAR_JOINT / speed, 0.5);
  while (step < 0.5 && distance(at(step), joint) < NEAR_JOINT / 2) {
    step *= 2;
  }
  return Math.min(step, 0.5);
}

/** A rectangle that holds the segment, with the tolerance about it. */
function boxOf(segment: Segment): Box {
  const held = heldPoints(segment);
  const xs = held.map(({ x }) => x);
  const ys = held.map(({ y }) => y);
  return {
    left: Math.min(...xs) - LENGTH_TOLERANCE,
    right: Math.max(...xs) + LENGTH_TOLERANCE,
    bottom: Math.min(...ys) - LENGTH_TOLERANCE,
    top: Math.max(...ys) + LENGTH_TOLERANCE,
  };
}

/** A Bezier curve lies in the hull of its control points. */
function heldPoints(segment: Segment): Point[] {
  const { from, to } = segment;
  switch (segment.kind) {
    case 'quadratic':
      return [from, segment.control, to];
    case 'cubic':
      return [from, segment.control1, segment.control2, to];
    default:
      return extremes(segment);
  }
}
