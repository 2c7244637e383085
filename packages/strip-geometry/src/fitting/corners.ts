import { toRadians } from '../angle.js';
import type { Point } from '../outline.js';
import { cross, distance, dot, minus, turnFrom } from '../point.js';
import { type FittedLine, fittedLine } from './carrier-fit.js';
import type { RingOfPoints } from './ring-of-points.js';

/** A break of direction is a corner from here on. Noise in a trace turns less. */
const LEAST_CORNER = toRadians(10);

const LARGE_CORNER = toRadians(45);

/**
 * Seen with arms half as long a corner turns as much as before, a tight arc
 * half as much. From this share on it is a corner.
 */
const SHARPNESS = 0.75;

/**
 * The numbers of the points at which the direction breaks, ascending. The
 * direction on either side is that of the line fitted to `arm` points; a turn
 * that goes on beside the place, as on an arc, is taken off.
 */
export function findCorners(ring: RingOfPoints, arm: number): readonly number[] {
  const numbers = Array.from({ length: ring.size }, (_, number) => number);
  const long = breaksOf(ring, arm);
  const short = breaksOf(ring, Math.max(Math.round(arm / 2), 3));
  const breakAt = (number: number) => Math.abs(long(number));
  const nearby = Array.from(
    { length: 2 * Math.ceil(arm / 2) + 1 },
    (_, at) => at - Math.ceil(arm / 2),
  );
  const places = numbers.flatMap((number) => {
    const here = breakAt(number);
    if (here < LEAST_CORNER) {
      return [];
    }
    for (let off = 1; off <= arm; off++) {
      if (breakAt(number + off) > here || breakAt(number - off) >= here) {
        return [];
      }
    }
    const sharpest = nearby
      .map((off) => number + off)
      .reduce((best, other) => (Math.abs(short(other)) > Math.abs(short(best)) ? other : best));
    // A corner nearby, the other way, adds to the break; what a large one turns in all tells.
    const turned = Math.abs(turnAt(ring, sharpest, arm));
    const whole = turned >= LARGE_CORNER ? Math.min(here, turned) : here;
    return Math.abs(short(sharpest)) >= SHARPNESS * whole ? [sharpest] : [];
  });
  const refined = places.map((place) => nearestToMeeting(ring, place, arm));
  return [...new Set(refined)].sort((a, b) => a - b);
}

/** For each point, how much more the direction turns there than an arm's length to either side. */
function breaksOf(ring: RingOfPoints, arm: number): (number: number) => number {
  const turns = Array.from({ length: ring.size }, (_, number) => turnAt(ring, number, arm));
  const turnOf = (number: number) => turns[(number + ring.size) % ring.size] ?? 0;
  return (number) => turnOf(number) - (turnOf(number - arm) + turnOf(number + arm)) / 2;
}

/** For each point, the turn from the arm before it to the arm after it, radians. */
export function turnsAt(ring: RingOfPoints, arm: number): (number: number) => number {
  return (number) => turnAt(ring, number, arm);
}

function turnAt(ring: RingOfPoints, number: number, arm: number): number {
  const before = headingOf(ring, number - arm, number - 1);
  const after = headingOf(ring, number + 1, number + arm);
  return turnFrom(before.heading, after.heading);
}

/** The line fitted to points `first` to `last`, along the way they run. */
function headingOf(ring: RingOfPoints, first: number, last: number): FittedLine {
  const shift = first < 0 ? ring.size : first >= ring.size ? -ring.size : 0;
  const { middle, heading } = fittedLine(ring.sums(first + shift, last + shift));
  const forward = dot(heading, minus(ring.at(last), ring.at(first))) >= 0;
  return { middle, heading: forward ? heading : { x: -heading.x, y: -heading.y } };
}

/** The point nearest to where the lines of both arms, each without its last two points, meet. */
function nearestToMeeting(ring: RingOfPoints, place: number, arm: number): number {
  const before = headingOf(ring, place - arm, place - 2);
  const after = headingOf(ring, place + 2, place + arm);
  const spread = cross(before.heading, after.heading);
  const reach = cross(minus(after.middle, before.middle), after.heading) / spread;
  const meeting: Point = {
    x: before.middle.x + before.heading.x * reach,
    y: before.middle.y + before.heading.y * reach,
  };
  let best = place;
  for (let number = place - 3; number <= place + 3; number++) {
    if (distance(ring.at(number), meeting) < distance(ring.at(best), meeting)) {
      best = number;
    }
  }
  return (best + ring.size) % ring.size;
}
