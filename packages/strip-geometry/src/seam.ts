import { toDegrees, toRadians } from './angle.js';
import type { Outline, Segment } from './outline.js';
import { startedAtSegment, startedInSegment } from './path-start.js';
import { startedWhereAsked } from './seam-asked.js';
import { SEAM_TURN_LIMIT, type SeamPlace, type SeamRoom } from './seam-place.js';
import { radiusOf } from './segment.js';
import {
  type MeasuredPath,
  measuredPath,
  stretchesAfterAll,
  turnWithin,
} from './smooth-stretch.js';
import { StripError } from './strip-error.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printNumber } from './wording.js';

/**
 * The same outline, run from where the strip's ends should join: the start of
 * the longest straight side that the tab fits on, so that the tab lies flat
 * against it. Where the tab fits no straight side, the start of the curve of
 * greatest radius that it fits on, or else of the smooth run of sides and
 * curves that turns least under the tab. Of equals, the first one.
 *
 * @throws StripError naming the tab if it fits nowhere, or only on a curve
 * where it would turn through more than `SEAM_TURN_LIMIT`.
 */
export function startAtSeam(outline: Outline, tab: number): Outline {
  return placeSeam(outline, { name: 'tab', overlap: tab, flatBefore: 0 });
}

/**
 * The same outline, run from where a seam's ends meet. Where no place is given
 * it is chosen as `startAtSeam` tells, and a seam that needs a flat on either
 * side is put in the middle of the longest side that it fits on.
 *
 * @param cornerAngle degrees; joints that turn by no more are smooth
 * @throws StripError naming `tab` if the seam fits nowhere, `seamAt` if it does
 * not fit where it was asked for or there is no such place.
 */
export function placeSeam(
  outline: Outline,
  seam: SeamRoom,
  place?: SeamPlace,
  cornerAngle: number = toDegrees(ANGLE_TOLERANCE),
): Outline {
  const measured = measuredPath(outline.segments);
  const smooth = toRadians(cornerAngle);
  const segments =
    place === undefined
      ? startedWhereItFits(measured, seam, smooth)
      : startedWhereAsked(measured, seam, place, smooth);
  return segments === outline.segments ? outline : { ...outline, segments };
}

function startedWhereItFits(
  measured: MeasuredPath,
  seam: SeamRoom,
  smooth: number,
): readonly Segment[] {
  const { path, lengths } = measured;
  const needed = seam.overlap + 2 * seam.flatBefore;
  const sides = path
    .map((segment, index) => ({ segment, index, length: lengths[index] ?? 0 }))
    .filter(({ length }) => length >= needed - LENGTH_TOLERANCE)
    .map((side): Side => ({ ...side, ...seamOn(side, seam) }));
  const straight = sides.filter(({ segment }) => segment.kind === 'line');
  const flat = greatest(straight, ({ length }) => length);
  if (flat !== undefined) {
    return startedInSegment(path, flat.index, flat.from);
  }
  const limit = toRadians(SEAM_TURN_LIMIT);
  const curve = greatest(sides, (side) => radiusUnder(side, seam));
  if (curve !== undefined && curve.turn <= limit) {
    return startedInSegment(path, curve.index, curve.from);
  }
  const run =
    seam.flatBefore > 0 ? undefined : straightestStart(measured, seam.overlap, smooth, limit);
  if (run === undefined) {
    throw fitsNowhere(lengths, seam, curve);
  }
  return startedAtSegment(path, run);
}

/** A segment of an outline that a seam fits on, and where on it the seam would lie. */
interface Side {
  readonly segment: Segment;
  /** Which segment of the outline it is. */
  readonly index: number;
  readonly length: number;
  /** How far along it the seam starts. */
  readonly from: number;
  /** Radians that it turns through under the seam. */
  readonly turn: number;
}

/** Places along a curve of changing radius at which a seam is tried. */
const TRIED = 32;

/**
 * Where a seam lies on a side: at its start, in its middle where it needs room,
 * or where a curve of changing radius turns least.
 */
function seamOn(
  { segment, length }: Pick<Side, 'segment' | 'length'>,
  { overlap, flatBefore }: SeamRoom,
): Pick<Side, 'from' | 'turn'> {
  if (segment.kind === 'line' || segment.kind === 'arc') {
    const from = flatBefore > 0 ? (length - overlap) / 2 : 0;
    return { from, turn: turnWithin(segment, from, from + overlap) };
  }
  const [first, last] = [flatBefore, length - overlap - flatBefore];
  let best = { from: first, turn: turnWithin(segment, first, first + overlap) };
  for (let tried = 1; tried <= TRIED; tried++) {
    // With the middle of the seam at even steps, so that it can lie square on a side.
    const from = Math.min(Math.max((tried / TRIED) * length - overlap / 2, first), last);
    const turn = turnWithin(segment, from, from + overlap);
    if (turn < best.turn - ANGLE_TOLERANCE) {
      best = { from, turn };
    }
  }
  return best;
}

/** Radius of an arc, or the mean radius of another curve under the seam, 0 where there is none. */
function radiusUnder({ segment, turn }: Side, seam: SeamRoom): number {
  if (segment.kind === 'arc') {
    return radiusOf(segment);
  }
  if (turn > ANGLE_TOLERANCE) {
    return seam.overlap / turn;
  }
  return seam.overlap > 0 ? Number.POSITIVE_INFINITY : 0;
}

/** The start from which the path stays smooth under the overlap and turns least, if gently enough. */
function straightestStart(
  measured: MeasuredPath,
  overlap: number,
  smooth: number,
  limit: number,
): number | undefined {
  let best: { readonly index: number; readonly turn: number } | undefined;
  stretchesAfterAll(measured, overlap, smooth).forEach(({ reached, turn }, index) => {
    const fits = reached >= overlap - LENGTH_TOLERANCE && turn <= limit;
    if (fits && (best === undefined || turn < best.turn - ANGLE_TOLERANCE)) {
      best = { index, turn };
    }
  });
  return best?.index;
}

function fitsNowhere(
  lengths: readonly number[],
  seam: SeamRoom,
  tight: Side | undefined,
): StripError {
  const needed = seam.overlap + 2 * seam.flatBefore;
  if (tight !== undefined) {
    const degrees = printNumber(toDegrees(tight.turn));
    const message =
      `The ${seam.name} would turn through ${degrees} degrees on the widest curve it fits on; it ` +
      `may turn through ${SEAM_TURN_LIMIT} at most. Make it shorter than ${printLength(needed)}.`;
    return new StripError('tab', message);
  }
  const most = lengths.reduce((longest, length) => Math.max(longest, length), 0);
  const message =
    `The ${seam.name} must be at most as long as the longest side or curve it is joined to, ` +
    `${printLength(most)}; got ${printLength(needed)}.`;
  return new StripError('tab', message);
}

/** The first of those that measure most, within the tolerance. */
function greatest(sides: readonly Side[], measure: (side: Side) => number): Side | undefined {
  const measures = sides.map(measure);
  const most = measures.reduce((greater, one) => Math.max(greater, one), Number.NEGATIVE_INFINITY);
  return sides[measures.findIndex((one) => one >= most - LENGTH_TOLERANCE)];
}
