import type { Bounds } from '../measure.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { SvgError } from './svg-error.js';

/** Two sizes asked for may disagree with the drawing's proportions by this share: rounding. */
const SAME_SIZE = 0.005;

/** A size that the largest outline is to have, in millimetres. */
export interface AskedSize {
  readonly across?: number | undefined;
  readonly high?: number | undefined;
}

/**
 * How much a drawing must be enlarged so that its largest outline is as asked;
 * 1 where nothing is asked. Where both sizes are asked the first decides.
 *
 * @throws SvgError `out of range`, `no closed shape`, `contradictory sizes`.
 */
export function scaleFor({ across, high }: AskedSize, largest: Bounds): number {
  for (const [name, size] of Object.entries({ across, high })) {
    if (size !== undefined && !(size > 0 && Number.isFinite(size))) {
      const message = `"${name}" must be a length above 0 mm; got ${printLength(size)}.`;
      throw new SvgError('out of range', message);
    }
  }
  const isAsked = across !== undefined || high !== undefined;
  if (isAsked && Math.min(largest.across, largest.high) <= LENGTH_TOLERANCE) {
    const message =
      `The largest outline is ${printLength(largest.across)} across and ` +
      `${printLength(largest.high)} high, and holds no area; draw it as a closed shape.`;
    throw new SvgError('no closed shape', message);
  }
  const byWidth = across === undefined ? undefined : across / largest.across;
  const byHeight = high === undefined ? undefined : high / largest.high;
  if (byWidth !== undefined && byHeight !== undefined && across !== undefined) {
    if (Math.abs(byWidth / byHeight - 1) > SAME_SIZE) {
      const message =
        `The largest outline is ${printLength(largest.across)} across and ` +
        `${printLength(largest.high)} high, so ${printLength(across)} across makes it ` +
        `${printLength(largest.high * byWidth)} high; got ${printLength(high ?? 0)} high as ` +
        'well. Give one of the two, the drawing keeps its proportions.';
      throw new SvgError('contradictory sizes', message);
    }
  }
  return byWidth ?? byHeight ?? 1;
}
