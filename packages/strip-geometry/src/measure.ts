import { FULL_TURN } from './angle.js';
import type { Arc, Outline, Point, Segment } from './outline.js';
import { cross, minus, polar } from './point.js';
import { lengthOf, radiusOf } from './segment.js';

/** The upright rectangle that just holds an outline. Millimetres. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  /** Extent along x. */
  readonly across: number;
  /** Extent along y. */
  readonly high: number;
}

/** Length once round the outline as drawn, millimetres. */
export function perimeter(outline: Outline): number {
  return outline.segments.reduce((sum, segment) => sum + lengthOf(segment), 0);
}

/**
 * Area inside the outline in square millimetres: positive if it is run
 * anticlockwise, negative if clockwise. Shoelace sum over the chords plus the
 * circular segment between each arc and its chord.
 */
export function signedArea(outline: Outline): number {
  const chords = outline.segments.reduce((sum, { from, to }) => sum + cross(from, to) / 2, 0);
  return outline.segments.reduce((sum, segment) => {
    if (segment.kind === 'line') {
      return sum;
    }
    return sum + (radiusOf(segment) ** 2 * (segment.sweep - Math.sin(segment.sweep))) / 2;
  }, chords);
}

/** The upright rectangle round the outline, with the bulge of every arc. */
export function bounds(outline: Outline): Bounds {
  const reached = outline.segments.flatMap(extremes);
  const left = Math.min(...reached.map(({ x }) => x));
  const right = Math.max(...reached.map(({ x }) => x));
  const bottom = Math.min(...reached.map(({ y }) => y));
  const top = Math.max(...reached.map(({ y }) => y));
  return { left, right, bottom, top, across: right - left, high: top - bottom };
}

function extremes(segment: Segment): Point[] {
  const ends = [segment.from, segment.to];
  if (segment.kind === 'line') {
    return ends;
  }
  const quarters = [0, 1, 2, 3]
    .map((quarter) => (quarter * Math.PI) / 2)
    .filter((angle) => passes(segment, angle))
    .map((angle) => polar(segment.centre, radiusOf(segment), angle));
  return [...ends, ...quarters];
}

/** Whether the arc passes the direction `angle`, seen from its centre. */
function passes(segment: Arc, angle: number): boolean {
  const { x, y } = minus(segment.from, segment.centre);
  const sense = Math.sign(segment.sweep);
  const swept = sense * (angle - Math.atan2(y, x));
  const onFirstTurn = ((swept % FULL_TURN) + FULL_TURN) % FULL_TURN;
  return onFirstTurn <= Math.abs(segment.sweep);
}
