import { fitTraces, isTraced, TINY } from '../fitting/fit-trace.js';
import type { Outline, Segment } from '../outline.js';
import { lengthOf } from '../segment.js';
import { printLength, printPoint } from '../wording.js';
import { type Loop, ORIGIN } from './closed-loops.js';
import { MOST_FITTED } from './limits.js';
import { SvgError, type SvgPlace } from './svg-error.js';

/**
 * The outlines of which `isFitted` is true fitted with few lines and arcs, the
 * others as they are.
 *
 * @param loops what drew each outline
 * @throws SvgError `too large` where they are too many to fit; `too many bends`
 * where one has hundreds of corners of its own, so that no fit within the
 * tolerance has fewer.
 */
export function fittedOutlines(
  outlines: readonly Outline[],
  loops: readonly Loop[],
  tolerance: number,
  isFitted: (outline: Outline) => boolean,
): readonly Outline[] {
  const traces = outlines.filter(isFitted);
  if (traces.length > MOST_FITTED) {
    const message =
      `The drawing has ${traces.length} outlines to fit with few lines and arcs; at most ` +
      `${MOST_FITTED} are fitted at once. Divide the drawing, or read it without fitting.`;
    throw new SvgError('too large', message);
  }
  const fits = fitTraces(traces, tolerance);
  return outlines.map((outline, index) => {
    if (!isFitted(outline)) {
      return outline;
    }
    const fitted: Outline = fits.next().value ?? outline;
    const place = loops[index]?.place;
    if (place !== undefined && isTraced(fitted)) {
      throw tooManyBends(fitted.segments, tolerance, place);
    }
    return fitted;
  });
}

function tooManyBends(segments: readonly Segment[], tolerance: number, place: SvgPlace): SvgError {
  const tiny = segments.filter((segment) => lengthOf(segment) < TINY);
  const [first] = tiny;
  const where = first === undefined ? '' : `, the first at ${printPoint(first.from)}`;
  const message =
    `Even fitted within ${printLength(tolerance)} it has ${tiny.length} pieces shorter than ` +
    `${printLength(TINY)}${where} (in millimetres from ${ORIGIN}), too many to bend. Smooth or ` +
    'enlarge the drawing, allow a larger tolerance, or read it without fitting.';
  return new SvgError('too many bends', message, place);
}
