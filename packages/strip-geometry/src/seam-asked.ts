import { toDegrees, toRadians } from './angle.js';
import type { Segment } from './outline.js';
import { startedAtSegment, startedInSegment } from './path-start.js';
import { SEAM_TURN_LIMIT, type SeamPlace, type SeamRoom } from './seam-place.js';
import {
  corners,
  type MeasuredPath,
  measuredPath,
  type Stretch,
  stretchAfter,
  stretchBefore,
} from './smooth-stretch.js';
import { StripError } from './strip-error.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printNumber } from './wording.js';

/**
 * The path started where the user wants the seam.
 *
 * @param smooth radians; joints that turn by no more are smooth
 * @throws StripError naming `seamAt` if there is no such place, or the seam does not fit there.
 */
export function startedWhereAsked(
  measured: MeasuredPath,
  { name, overlap, flatBefore }: SeamRoom,
  place: SeamPlace,
  smooth: number,
): readonly Segment[] {
  const started = startAsked(measured, overlap, place, smooth);
  const again = measuredPath(started);
  checkStretch(stretchAfter(again, 0, overlap, smooth), overlap, name, 'after');
  checkStretch(stretchBefore(again, flatBefore, smooth), flatBefore, name, 'before');
  return started;
}

function startAsked(
  measured: MeasuredPath,
  overlap: number,
  place: SeamPlace,
  smooth: number,
): readonly Segment[] {
  if (place === 'middle of the longest flat') {
    return startedOnLongestFlat(measured, overlap);
  }
  if ('distance' in place) {
    return startedAfter(measured, place.distance);
  }
  const found = corners(measured, smooth);
  const index = found[place.corner - 1];
  if (index === undefined) {
    const has = found.length === 0 ? 'no corner' : `the corners 1 to ${found.length}`;
    const message = `The outline has ${has}; got corner ${printNumber(place.corner)}.`;
    throw new StripError('seamAt', message);
  }
  return startedAtSegment(measured.path, index);
}

function startedOnLongestFlat(
  { path, lengths }: MeasuredPath,
  overlap: number,
): readonly Segment[] {
  const flats = path.map(({ kind }, index) => (kind === 'line' ? (lengths[index] ?? 0) : 0));
  const longest = flats.reduce((most, length) => Math.max(most, length), 0);
  if (longest === 0) {
    throw new StripError('seamAt', 'The outline has no flat; put the seam at a distance instead.');
  }
  const index = flats.findIndex((length) => length >= longest - LENGTH_TOLERANCE);
  return startedInSegment(path, index, (longest - overlap) / 2);
}

function startedAfter({ path, lengths }: MeasuredPath, distance: number): readonly Segment[] {
  const once = lengths.reduce((sum, length) => sum + length, 0);
  if (!(distance >= 0 && distance <= once + LENGTH_TOLERANCE)) {
    const message =
      `The seam must lie from 0 mm to ${printLength(once)} along the outline; ` +
      `got ${printLength(distance)}.`;
    throw new StripError('seamAt', message);
  }
  let left = distance;
  for (const [index, length] of lengths.entries()) {
    if (left < length) {
      return startedInSegment(path, index, left);
    }
    left -= length;
  }
  return path;
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
