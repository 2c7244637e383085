import { toRadians } from '../angle.js';
import { isStraight } from '../curves/straight.js';
import type { CurveRun } from '../develop.js';
import type { Places, Stretch } from '../marks/places.js';
import { distance, turnFrom } from '../point.js';
import { headingAt, pointAt } from '../segment.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';

/** How a curve turns, radians, positive to the left. */
export interface CurveTurns {
  /** At the joint before it, where the outline has a tangent break that counts as smooth. */
  readonly atStart: number;
  /** In its first half, with what it turns at the joint before it. */
  readonly first: number;
  /** In its second half, with what it turns at the joint after it. */
  readonly second: number;
}

/** A half turn that is this near to 180 degrees may come out of a computation with either sign. */
const NEARLY_HALF = Math.PI - 1e-6;

/**
 * Divides the turn of a curve: that of its drawn shape, up to its middle and
 * beyond, and those of the tangent breaks at its ends that count as smooth (see
 * `takenTurns`). Where it has a flat at either end, both breaks are taken to be equal.
 */
export function turnsOfCurve(places: Places, index: number, run: CurveRun): CurveTurns {
  const { segment, start, end } = run.shape;
  const sense = run.direction === 'in' ? 1 : -1;
  const middle = headingAt(segment, (start + end) / 2);
  const [first, second] = [
    turnFrom(headingAt(segment, start), middle),
    turnFrom(middle, headingAt(segment, end)),
  ].map((turn) => (Math.abs(turn) > NEARLY_HALF ? sense * Math.abs(turn) : turn));
  const own = (first ?? 0) + (second ?? 0);
  const breaks = sense * toRadians(run.angle) - own;

  const { stretches } = places;
  const before = breakBetween(places, (index - 1 + stretches.length) % stretches.length, index);
  const after = breakBetween(places, index, (index + 1) % stretches.length);
  let atStart = before?.after;
  if (atStart === undefined) {
    atStart = after === undefined ? breaks / 2 : breaks - after.before;
  }
  return { atStart, first: atStart + (first ?? 0), second: breaks - atStart + (second ?? 0) };
}

/**
 * The turn of the break between two stretches, as either takes it; undefined
 * if one of them is flat, so that the other's turn must tell.
 */
function breakBetween(
  { places, stretches }: Places,
  first: number,
  second: number,
): { before: number; after: number } | undefined {
  const [a, b] = [stretches[first], stretches[second]];
  // The place after the last stretch is where the first begins again.
  if (places[first + 1]?.bend !== undefined) {
    return { before: 0, after: 0 };
  }
  return a?.kind === 'curve' && b?.kind === 'curve' ? shared(a, b) : undefined;
}

type CurveStretch = Extract<Stretch, { kind: 'curve' }>;

function shared(a: CurveStretch, b: CurveStretch): { before: number; after: number } {
  const [before, after] = [a.run.shape, b.run.shape];
  const gap = distance(pointAt(before.segment, before.end), pointAt(after.segment, after.start));
  if (gap > LENGTH_TOLERANCE) {
    // The ends of a part of a divided strip: no joint of the outline.
    return { before: 0, after: 0 };
  }
  const turn = turnFrom(
    headingAt(before.segment, before.end),
    headingAt(after.segment, after.start),
  );
  const straight = [isStraight(before.segment), isStraight(after.segment)];
  if (straight[0] === straight[1]) {
    return { before: turn / 2, after: turn / 2 };
  }
  return straight[0] ? { before: 0, after: turn } : { before: turn, after: 0 };
}
