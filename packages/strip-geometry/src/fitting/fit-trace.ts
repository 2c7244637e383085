import { bounds } from '../measure.js';
import type { Outline, Point } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { lengthOf } from '../segment.js';
import { moved } from '../transform.js';
import { printLength } from '../wording.js';
import { bestFit } from './best-fit.js';
import { polygonFit, tracedPolygon } from './polygon-fit.js';
import { sharpened } from './sharpened.js';
import { traceOf } from './trace.js';

/** How far a fitted outline may lie from its trace where nothing is said, millimetres. */
export const FITTING_TOLERANCE = 0.2;

/** Segments shorter than this, in millimetres, are as a trace has them. */
export const TINY = 2.5;

/** An outline with more tiny segments than this is a trace. */
export const MOST_TINY = 40;

/** Whether an outline looks traced: more than 40 of its segments are shorter than 2.5 mm. */
export function isTraced({ segments }: Outline): boolean {
  return segments.filter((segment) => lengthOf(segment) < TINY).length > MOST_TINY;
}

/** An outline of no more segments is few pieces already. */
const FEW_ALREADY = 8;

/** Points that are tried at most for all outlines that are fitted together. */
const MOST_TRIED = 16_000;

/**
 * The outline as a few lines and arcs, for one that was traced as hundreds of
 * tiny segments. They run smoothly into each other except where the direction
 * of the trace really breaks, by about 10 degrees or more. No point of either
 * line is farther than `tolerance` millimetres from the other; this is measured
 * on the result. A trace of nothing but straight sides comes out as the polygon
 * it is. Where no smooth fit is found, it is the polygon with few
 * corners that keeps within the tolerance. An outline of 8 segments or fewer is
 * returned as it is, and so is one for which nothing with fewer segments keeps
 * within the tolerance.
 *
 * The work is bounded: the more outlines are fitted together, the fewer ways
 * to fit each are tried, and the more pieces it may come out with.
 *
 * @throws OutlineError `out of range` for a tolerance that is not above 0.
 */
export function fitTrace(outline: Outline, tolerance: number = FITTING_TOLERANCE): Outline {
  const [fitted] = fitTraces([outline], tolerance);
  return fitted ?? outline;
}

/** Each outline in turn fitted as `fitTrace` does, the work of one shared out evenly. */
export function* fitTraces(outlines: readonly Outline[], tolerance: number): Generator<Outline> {
  if (!(tolerance > 0 && Number.isFinite(tolerance))) {
    const message = `"tolerance" must be a length above 0 mm; got ${printLength(tolerance)}.`;
    throw new OutlineError('out of range', message, 'tolerance');
  }
  let left = MOST_TRIED;
  for (const [index, outline] of outlines.entries()) {
    if (outline.segments.length <= FEW_ALREADY) {
      yield outline;
      continue;
    }
    const middle = middleOf(outline);
    const centred = moved(outline, { x: -middle.x, y: -middle.y });
    const share = left / (outlines.length - index);
    const trace = traceOf(centred, tolerance, share / FEWEST_TRIES);
    const polygon = tracedPolygon(trace);
    const { fitted, tried } = polygon ? { fitted: polygon, tried: 0 } : bestFit(trace, share);
    left -= tried;
    const found = fitted === undefined ? polygonFit(trace) : sharpened(trace, fitted);
    yield found === undefined ? outline : moved(found, middle);
  }
}

/** Ways to fit each outline that there should be points enough for. */
const FEWEST_TRIES = 2;

function middleOf(outline: Outline): Point {
  const { left, right, bottom, top } = bounds(outline);
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
}
