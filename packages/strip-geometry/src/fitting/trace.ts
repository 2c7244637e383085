import { checkOutline } from '../check-outline.js';
import { perimeter } from '../measure.js';
import type { Outline, Segment } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { deviationBetween } from './deviation.js';
import { evenlySpaced } from './evenly-spaced.js';
import { RingOfPoints } from './ring-of-points.js';

/** An outline that is to be fitted, with what every way to fit it needs. */
export interface Trace {
  readonly outline: Outline;
  /** How far the fit may lie from it, millimetres. */
  readonly tolerance: number;
  /** Points along it. */
  readonly ring: RingOfPoints;
  /** Distance from point to point along it, millimetres. */
  readonly spacing: number;
}

/** Distance between the points that are fitted, and the bounds of their number. */
const USUAL_SPACING = 0.4;
const FEWEST_POINTS = 400;
const MOST_POINTS = 1600;

/** The outline as a trace to be fitted within the tolerance, with `most` points along it or so. */
export function traceOf(outline: Outline, tolerance: number, most: number): Trace {
  const length = perimeter(outline);
  const usual = Math.min(length / USUAL_SPACING, MOST_POINTS, most);
  const count = Math.max(usual, FEWEST_POINTS);
  const spacing = length / count;
  return { outline, tolerance, spacing, ring: new RingOfPoints(evenlySpaced(outline, spacing)) };
}

/**
 * The outline with these segments in place of its own, if there are fewer of
 * them, within the tolerance all round and sound; else undefined.
 */
export function asFit(
  { outline, tolerance }: Trace,
  segments: readonly Segment[],
): Outline | undefined {
  const fitted = { ...outline, segments };
  const isFit =
    segments.length < outline.segments.length &&
    deviationBetween(outline, fitted, tolerance) <= tolerance &&
    isSound(fitted);
  return isFit ? fitted : undefined;
}

function isSound(outline: Outline): boolean {
  try {
    checkOutline(outline);
    return true;
  } catch (error) {
    if (error instanceof OutlineError) {
      return false;
    }
    throw error;
  }
}
