import { toDegrees, toRadians } from './angle.js';
import type { Outline, Segment } from './outline.js';
import type { Seam } from './seams/seam.js';
import { lengthOf, radiusOf } from './segment.js';
import {
  corners,
  measuredPath,
  type Stretch,
  stretchAfter,
  stretchBefore,
  turnWithin,
} from './smooth-stretch.js';
import { splitSegment } from './split-segment.js';
import { StripError } from './strip-error.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printNumber } from './wording.js';

/**
 * Where the ends of a strip meet, as a shop asks for it: at a corner of the
 * outline, counted from 1 in the order it is drawn; at a distance along the
 * outline, millimetres from where its drawing starts; or in the middle of its
 * longest straight side.
 */
export type SeamPlace =
  | { readonly corner: number }
  | { readonly distance: number }
  | 'middle of the longest flat';

/**
 * Degrees that the ends may turn through where they lie on each other. More is
 * a tight curve, which neither pinches shut nor lies close (common practice).
 */
export const SEAM_TURN_LIMIT = 90;

/** A seam nearer to a joint than this is at the joint: far less than a rule shows, millimetres. */
const SNAP = 0.01;

/** What of a seam decides where it fits. Millimetres. */
type SeamRoom = Pick<Seam, 'name' | 'overlap' | 'flatBefore'>;

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
  const { segments } = outline;
  const smooth = toRadians(cornerAngle);
  const path =
    place === undefined ? chosen(segments, seam, smooth) : asked(segments, seam, place, smooth);
  return path === segments ? outline : { ...outline, segments: path };
}

function chosen(path: readonly Segment[], seam: SeamRoom, smooth: number): readonly Segment[] {
  const { overlap, flatBefore } = seam;
  const needed = overlap + 2 * flatBefore;
  const fitting = path.filter((segment) => lengthOf(segment) >= needed - LENGTH_TOLERANCE);
  const straight = fitting.filter(({ kind }) => kind === 'line');
  const flat = greatest(straight, lengthOf);
  if (flat !== undefined) {
    return startedIn(path, flat, seam);
  }
  const gentle = (segment: Segment) => turnUnder(segment, seam) <= toRadians(SEAM_TURN_LIMIT);
  const curve = greatest(fitting, (segment) => radiusUnder(segment, seam));
  if (curve !== undefined && gentle(curve)) {
    return startedIn(path, curve, seam);
  }
  const run = flatBefore > 0 ? undefined : straightestStart(path, overlap, smooth);
  if (run === undefined) {
    throw fitsNowhere(path, seam, curve);
  }
  return rotated(path, run);
}

/** The path started at a side: at its start, or with the seam in its middle where it needs room. */
function startedIn(path: readonly Segment[], side: Segment, seam: SeamRoom): readonly Segment[] {
  const index = path.indexOf(side);
  const into = seam.flatBefore > 0 ? (lengthOf(side) - seam.overlap) / 2 : 0;
  return startedAt(path, index, into);
}

/** The path started `into` millimetres along its segment of that index. */
function startedAt(path: readonly Segment[], index: number, into: number): readonly Segment[] {
  const segment = path[index];
  if (segment === undefined || into <= SNAP) {
    return rotated(path, index);
  }
  if (into >= lengthOf(segment) - SNAP) {
    return rotated(path, (index + 1) % path.length);
  }
  const [before, after] = splitSegment(segment, into);
  return [after, ...path.slice(index + 1), ...path.slice(0, index), before];
}

function rotated(path: readonly Segment[], index: number): readonly Segment[] {
  return index === 0 ? path : [...path.slice(index), ...path.slice(0, index)];
}

/** The start from which the path stays smooth under the overlap and turns least, if gently enough. */
function straightestStart(
  path: readonly Segment[],
  overlap: number,
  smooth: number,
): number | undefined {
  const measured = measuredPath(path);
  let best: { readonly index: number; readonly turn: number } | undefined;
  path.forEach((_, index) => {
    const { reached, turn } = stretchAfter(measured, index, overlap, smooth);
    const fits = reached >= overlap - LENGTH_TOLERANCE && turn <= toRadians(SEAM_TURN_LIMIT);
    if (fits && (best === undefined || turn < best.turn - ANGLE_TOLERANCE)) {
      best = { index, turn };
    }
  });
  return best?.index;
}

function asked(
  path: readonly Segment[],
  seam: SeamRoom,
  place: SeamPlace,
  smooth: number,
): readonly Segment[] {
  const start = startAsked(path, seam, place, smooth);
  const { name, overlap, flatBefore } = seam;
  const measured = measuredPath(start);
  checkStretch(stretchAfter(measured, 0, overlap, smooth), overlap, name, 'after');
  checkStretch(stretchBefore(measured, flatBefore, smooth), flatBefore, name, 'before');
  return start;
}

function startAsked(
  path: readonly Segment[],
  seam: SeamRoom,
  place: SeamPlace,
  smooth: number,
): readonly Segment[] {
  if (place === 'middle of the longest flat') {
    const flat = greatest(
      path.filter(({ kind }) => kind === 'line'),
      lengthOf,
    );
    if (flat === undefined) {
      throw new StripError(
        'seamAt',
        'The outline has no flat; put the seam at a distance instead.',
      );
    }
    return startedAt(path, path.indexOf(flat), (lengthOf(flat) - seam.overlap) / 2);
  }
  if ('corner' in place) {
    const found = corners(measuredPath(path), smooth);
    const index = found[place.corner - 1];
    if (index === undefined) {
      const has = found.length === 0 ? 'no corner' : `the corners 1 to ${found.length}`;
      const message = `The outline has ${has}; got corner ${printNumber(place.corner)}.`;
      throw new StripError('seamAt', message);
    }
    return rotated(path, index);
  }
  return startedAfter(path, place.distance);
}

function startedAfter(path: readonly Segment[], distance: number): readonly Segment[] {
  const once = path.reduce((sum, segment) => sum + lengthOf(segment), 0);
  if (!(distance >= 0 && distance <= once + LENGTH_TOLERANCE)) {
    const message =
      `The seam must lie from 0 mm to ${printLength(once)} along the outline; ` +
      `got ${printLength(distance)}.`;
    throw new StripError('seamAt', message);
  }
  let left = distance;
  const index = path.findIndex((segment) => {
    const length = lengthOf(segment);
    if (left < length) {
      return true;
    }
    left -= length;
    return false;
  });
  return index < 0 ? path : startedAt(path, index, left);
}

function checkStretch(
  { reached, turn }: Stretch,
  needed: number,
  name: string,
  side: 'before' | 'after',
): void {
  if (reached < needed - LENGTH_TOLERANCE) {
    const message =
      `The ${name} needs ${printLength(needed)} without a corner ${side} the seam; there are ` +
      `${printLength(reached)}. Put the seam elsewhere, or make it smaller.`;
    throw new StripError('seamAt', message);
  }
  if (turn > toRadians(SEAM_TURN_LIMIT) + ANGLE_TOLERANCE) {
    const message =
      `The ${name} needs ${printLength(needed)} ${side} the seam, where the outline turns through ` +
      `${printNumber(toDegrees(turn))} degrees; it may turn through ${SEAM_TURN_LIMIT} at most. ` +
      'Put the seam on a flat or a wider curve, or make it smaller.';
    throw new StripError('seamAt', message);
  }
}

function fitsNowhere(
  path: readonly Segment[],
  { name, overlap, flatBefore }: SeamRoom,
  tight: Segment | undefined,
): StripError {
  const needed = overlap + 2 * flatBefore;
  if (tight !== undefined) {
    const degrees = printNumber(toDegrees(turnUnder(tight, { name, overlap, flatBefore })));
    const message =
      `The ${name} would turn through ${degrees} degrees on the widest curve it fits on; it may ` +
      `turn through ${SEAM_TURN_LIMIT} at most. Make it shorter than ${printLength(needed)}.`;
    return new StripError('tab', message);
  }
  const most = Math.max(...path.map(lengthOf));
  const message =
    `The ${name} must be at most as long as the longest side or curve it is joined to, ` +
    `${printLength(most)}; got ${printLength(needed)}.`;
  return new StripError('tab', message);
}

/** Radians that a segment turns through under a seam that lies on it. */
function turnUnder(segment: Segment, { overlap, flatBefore }: SeamRoom): number {
  const from = flatBefore > 0 ? (lengthOf(segment) - overlap) / 2 : 0;
  return turnWithin(segment, from, from + overlap);
}

/** Radius of an arc, or the mean radius of another curve under the seam. */
function radiusUnder(segment: Segment, seam: SeamRoom): number {
  if (segment.kind === 'arc') {
    return radiusOf(segment);
  }
  const turn = turnUnder(segment, seam);
  return turn > ANGLE_TOLERANCE ? seam.overlap / turn : 0;
}

/** The first of those that measure most, within the tolerance. */
function greatest(
  segments: readonly Segment[],
  measure: (segment: Segment) => number,
): Segment | undefined {
  const most = Math.max(...segments.map(measure));
  return segments.find((segment) => measure(segment) >= most - LENGTH_TOLERANCE);
}
