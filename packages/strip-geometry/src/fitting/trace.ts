import { checkOutline } from '../check-outline.js';
import { perimeter } from '../measure.js';
import type { Arc, Line, Outline } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { evenlySpaced } from './evenly-spaced.js';
import { RingOfPoints } from './ring-of-points.js';
import { TraceSamples } from './trace-samples.js';

/** An outline that is to be fitted, with what every way to fit it needs. */
export interface Trace {
  readonly outline: Outline;
  /** How far the fit may lie from it, millimetres. */
  readonly tolerance: number;
  /** Points along it that are fitted. */
  readonly ring: RingOfPoints;
  /** Distance from point to point along it, millimetres. */
  readonly spacing: number;
  /** Points along it that a fit is measured at. */
  readonly samples: TraceSamples;
}

/** Distance between the points that are fitted, and the bounds of their number. */
const USUAL_SPACING = 0.4;
const FEWEST_POINTS = 400;
const MOST_POINTS = 1600;

/** A fit is measured at so many points for each that is fitted, within these bounds. */
const MEASURED = 40;
const FEWEST_MEASURED = 10_000;
const MOST_MEASURED = 60_000;

/** The outline as a trace to be fitted within the tolerance, with `most` points along it or so. */
export function traceOf(outline: Outline, tolerance: number, most: number): Trace {
  const length = perimeter(outline);
  const usual = Math.min(length / USUAL_SPACING, MOST_POINTS, most);
  const count = Math.max(usual, FEWEST_POINTS);
  const spacing = length / count;
  const ring = new RingOfPoints(evenlySpaced(outline, spacing));
  const measured = Math.min(Math.max(most * MEASURED, FEWEST_MEASURED), MOST_MEASURED);
  const samples = new TraceSamples(outline, length, tolerance, measured);
  return { outline, tolerance, spacing, ring, samples };
}

/**
 * The outline with these segments in place of its own, if there are fewer of
 * them, within the tolerance all round and sound; else undefined.
 */
export function asFit(
  { outline, samples }: Trace,
  segments: readonly (Arc | Line)[],
): Outline | undefined {
  const fitted = { ...outline, segments };
  const isFit =
    segments.length < outline.segments.length && samples.areNear(segments) && isSound(fitted);
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
