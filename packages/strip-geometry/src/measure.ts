import { areaBesideChord } from './curves/area.js';
import { extremes } from './curves/extremes.js';
import type { Outline } from './outline.js';
import { cross } from './point.js';
import { lengthOf } from './segment.js';

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
 * area between each curve and its chord; both are exact (Green's theorem).
 */
export function signedArea(outline: Outline): number {
  const chords = outline.segments.reduce((sum, { from, to }) => sum + cross(from, to) / 2, 0);
  return outline.segments.reduce((sum, segment) => sum + areaBesideChord(segment), chords);
}

/** The upright rectangle round the outline, with the bulge of every curve. */
export function bounds(outline: Outline): Bounds {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const segment of outline.segments) {
    for (const { x, y } of extremes(segment)) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
  }
  return { left, right, bottom, top, across: right - left, high: top - bottom };
}
