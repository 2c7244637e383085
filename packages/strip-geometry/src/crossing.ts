import { FULL_TURN } from './angle.js';
import { type CarriedSegment, isCarried, meetings, shiftedCarrier } from './carrier.js';
import { meetingPoint, wholeOf } from './curves/meeting.js';
import type { Point, Segment } from './outline.js';
import { along, distance, dot, minus, turnFrom } from './point.js';
import { headingAtStart, lengthOf, radiusOf } from './segment.js';
import { LENGTH_TOLERANCE } from './tolerance.js';

/**
 * A point that two segments share, ends included, or undefined if they keep
 * apart. Points nearer than the tolerance are shared.
 */
export function sharedPoint(a: Segment, b: Segment): Point | undefined {
  return isCarried(a) && isCarried(b)
    ? sharedOnCarriers(a, b)
    : meetingPoint(wholeOf(a), wholeOf(b));
}

function sharedOnCarriers(a: CarriedSegment, b: CarriedSegment): Point | undefined {
  const [first, second] = [shiftedCarrier(a, 0), shiftedCarrier(b, 0)];
  const crossings = first && second ? meetings(first, second) : [];
  return [...crossings, a.from, a.to, b.from, b.to].find((p) => isOn(p, a) && isOn(p, b));
}

/** Whether the point lies on the segment, ends included. */
export function isOn(p: Point, segment: CarriedSegment): boolean {
  return distance(p, nearestOn(segment, p)) <= LENGTH_TOLERANCE;
}

/** The point of a segment that lies nearest to `p`. */
function nearestOn(segment: CarriedSegment, p: Point): Point {
  if (segment.kind === 'line') {
    const heading = headingAtStart(segment);
    const reach = dot(minus(p, segment.from), heading);
    return along(segment.from, heading, Math.min(Math.max(reach, 0), lengthOf(segment)));
  }
  const { from, to, centre, sweep } = segment;
  const apart = distance(p, centre);
  const turned = Math.sign(sweep) * turnFrom(minus(from, centre), minus(p, centre));
  if (apart > 0 && (turned + FULL_TURN) % FULL_TURN <= Math.abs(sweep)) {
    return along(centre, minus(p, centre), radiusOf(segment) / apart);
  }
  return distance(p, from) < distance(p, to) ? from : to;
}
