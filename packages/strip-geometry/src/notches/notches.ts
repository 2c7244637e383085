import { toRadians } from '../angle.js';
import type { Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength, printNumber } from '../wording.js';
import { hemReach } from './hem-reach.js';
import { hemAtBend } from './hem-side.js';
import { leastHalfAngle, mitreGap } from './least-half-angle.js';
import type { HemNotice, Notch } from './notch.js';
import { checkedOptions, type NotchOptions } from './notch-options.js';

/**
 * The notches of a strip: a V at every bend, through the hem to the hem line
 * and never past it. 45 degrees to each side unless another angle is chosen.
 * A strip with a raw edge has none.
 *
 * Source of the V and of its 45 degrees: common practice. Of the least angle:
 * `leastHalfAngle`.
 *
 * @throws StripError if the half-angle is out of range.
 */
export function notchesOf(
  { bends, edge, hemFace, bendRule }: Strip,
  options: NotchOptions = {},
): readonly Notch[] {
  const { halfAngle, hemStage } = checkedOptions(options);
  const depth = edge.notchDepth;
  if (depth === 0) {
    return [];
  }
  const half = depth * Math.tan(toRadians(halfAngle));
  const { insideRadius, thickness } = bendRule;
  const reach = hemReach(edge, thickness, hemStage);
  return bends.map(({ number, at, from, to, angle, direction }) => {
    const hem = hemAtBend(direction, hemFace);
    const bend = { angle, allowance: to - from, insideRadius, thickness };
    const closes = hem === 'closes';
    const least = closes ? leastHalfAngle(bend, edge, hemStage) : 0;
    const short = closes ? mitreGap(bend, reach) - reach * Math.tan(toRadians(halfAngle)) : 0;
    const overlap = Math.max(short, 0);
    const [start, end] = [at - half, at + half];
    return { bend: number, at, depth, halfAngle, least, overlap, hem, from: start, to: end };
  });
}

/** Millimetres: as near as a notch is cut and a hem bent by eye (common practice). */
const BY_EYE = 0.1;

/**
 * The notches that are too narrow for their bend, so that the hems run into each other by
 * more than a tenth of a millimetre, and those that overlap, also across the seam.
 */
export function notchNotices(strip: Strip, notches: readonly Notch[]): readonly HemNotice[] {
  return [...notches.flatMap(tooNarrow), ...overlapping(strip, notches)];
}

function tooNarrow({ bend, halfAngle, least, overlap }: Notch): HemNotice[] {
  if (overlap <= BY_EYE) {
    return [];
  }
  const message =
    `The notch at bend ${bend} opens ${printNumber(halfAngle)} degrees to each side; the hem ` +
    `needs ${printNumber(least)} to clear itself there. Cut it wider.`;
  const source = 'reckoned from the bend and the metal';
  return [{ code: 'notch too narrow', bend, halfAngle, least, source, message }];
}

function overlapping({ developed }: Strip, notches: readonly Notch[]): HemNotice[] {
  return notches.flatMap((notch, index): HemNotice[] => {
    const isLast = index === notches.length - 1;
    const next = notches[isLast ? 0 : index + 1];
    const by = next === undefined ? 0 : notch.to - next.from - (isLast ? developed : 0);
    if (next === undefined || by <= LENGTH_TOLERANCE) {
      return [];
    }
    const message =
      `The notches at bends ${notch.bend} and ${next.bend} overlap by ${printLength(by)} on the ` +
      'raw edge, so that no hem is left between them. Take a narrower hem or narrower notches.';
    const source = 'reckoned from the width of the notches';
    return [{ code: 'notches overlap', bends: [notch.bend, next.bend], by, source, message }];
  });
}
