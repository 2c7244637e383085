import type { Outline, Segment } from './outline.js';
import { lengthOf, radiusOf } from './segment.js';
import { StripError } from './strip-error.js';
import { LENGTH_TOLERANCE } from './tolerance.js';
import { printLength } from './wording.js';

/**
 * The same outline, run from where the strip's ends should join: the start of
 * the longest straight side that the tab fits on, so that the tab lies flat
 * against it. Where the tab fits no straight side, the start of the curve of
 * greatest radius that it fits on. Of equals, the first one.
 *
 * @throws StripError naming the tab if it is longer than every side.
 */
export function startAtSeam(outline: Outline, tab: number): Outline {
  const { segments } = outline;
  const fitting = segments.filter((segment) => lengthOf(segment) >= tab - LENGTH_TOLERANCE);
  const straight = fitting.filter(({ kind }) => kind === 'line');
  const start = straight.length > 0 ? greatest(straight, lengthOf) : greatest(fitting, radius);
  if (start === undefined) {
    const most = Math.max(...segments.map(lengthOf));
    const message =
      `The tab must be at most as long as the longest side or curve it is joined to, ` +
      `${printLength(most)}; got ${printLength(tab)}.`;
    throw new StripError('tab', message);
  }
  const index = segments.indexOf(start);
  return { ...outline, segments: [...segments.slice(index), ...segments.slice(0, index)] };
}

function radius(segment: Segment): number {
  return segment.kind === 'arc' ? radiusOf(segment) : 0;
}

/** The first of those that measure most, within the tolerance. */
function greatest(
  segments: readonly Segment[],
  measure: (segment: Segment) => number,
): Segment | undefined {
  const most = Math.max(...segments.map(measure));
  return segments.find((segment) => measure(segment) >= most - LENGTH_TOLERANCE);
}
