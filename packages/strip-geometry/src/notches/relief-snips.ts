import { toDegrees, toRadians } from '../angle.js';
import type { FormedCurve, Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { hemReach } from './hem-reach.js';
import { hemAtBend } from './hem-side.js';
import type { HemNotice, Notch } from './notch.js';
import { checkedOptions, type NotchOptions } from './notch-options.js';

/** A snip through the hem on a formed curve. */
export interface ReliefSnip {
  /** Number of the curve, counted from 1 from the square end. */
  readonly curve: number;
  readonly at: number;
  /** From the raw edge to the end of the snip, which is on the hem line. */
  readonly depth: number;
  /** Degrees to each side: a V where the curve closes the hem, 0 for a slit where it opens. */
  readonly halfAngle: number;
}

/**
 * The radius below which a formed curve gets relief snips: reach / strain.
 *
 * A hem that reaches off the wall's face by W has its free edge at r - W or
 * r + W round a curve of radius r, so that it is crushed or stretched by the
 * part W / r of its length. More than the allowed strain makes it buckle or
 * tear. The thickness beside r is left out. Source: derived here; the allowed
 * strain is common practice.
 *
 * @throws StripError if the strain is not above 0.
 */
export function reliefRadius(strip: Strip, options: NotchOptions = {}): number {
  const { hemStage, allowedStrain } = checkedOptions(options);
  return hemReach(strip.edge, strip.bendRule.thickness, hemStage) / allowedStrain;
}

/**
 * The relief snips of a strip: through the hem to the hem line on every curve
 * tighter than `reliefRadius`, at equal distances of at most 2 r strain, with
 * one at either end of the curve.
 *
 * A snip relieves what lies above the 45 degree lines from its root
 * (Saint-Venant's principle), so that between two snips s apart the hem is
 * strained only up to a height of s / 2, and there by s / (2 r). That is the
 * allowed strain where s = 2 r strain. At the radius of the limit s is 2 W,
 * where the triangles between the snips just reach the free edge.
 *
 * Where the curve opens the hem, a snip is a slit. Where it closes the hem, it
 * is a V that takes out what the piece turns through: half of that to each
 * side, as at a bend.
 *
 * Left out are snips inside a notch, at the ends of the strip, and second ones
 * at the same place.
 */
export function reliefSnips(
  strip: Strip,
  notches: readonly Notch[],
  options: NotchOptions = {},
): readonly ReliefSnip[] {
  const { allowedStrain } = checkedOptions(options);
  const limit = reliefRadius(strip, options);
  const { curves, edge, hemFace, seam, developed } = strip;
  const ends = { from: seam.atStart, to: seam.atStart + developed };
  const snips: ReliefSnip[] = [];
  const isFree = (at: number) =>
    at > ends.from + LENGTH_TOLERANCE &&
    at < ends.to - LENGTH_TOLERANCE &&
    notches.every(({ from, to }) => at < from || at > to) &&
    at > (snips.at(-1)?.at ?? Number.NEGATIVE_INFINITY) + LENGTH_TOLERANCE;

  curves.forEach((curve, index) => {
    const { from, to, radius, direction } = curve;
    if (edge.notchDepth === 0 || radius >= limit) {
      return;
    }
    const pieces = Math.ceil((to - from) / (2 * radius * allowedStrain) - LENGTH_TOLERANCE);
    const closes = hemAtBend(direction, hemFace) === 'closes';
    const halfAngle = closes ? halfAngleOf(curve, pieces, strip, options) : 0;
    for (let piece = 0; piece <= pieces; piece++) {
      const at = from + ((to - from) * piece) / pieces;
      if (isFree(at)) {
        snips.push({ curve: index + 1, at, depth: edge.notchDepth, halfAngle });
      }
    }
  });
  return snips;
}

/** Half of what the curve turns through from snip to snip, as `leastHalfAngle` gives it for R = 0. */
function halfAngleOf(
  { angle }: FormedCurve,
  pieces: number,
  { edge, bendRule }: Strip,
  options: NotchOptions,
): number {
  const reach = hemReach(edge, bendRule.thickness, checkedOptions(options).hemStage);
  const gap = reach * Math.tan(toRadians(angle / pieces) / 2);
  return toDegrees(Math.atan(gap / edge.foldedWidth));
}

/** The curves that close the hem and are tighter than it reaches, so that no snip helps. */
export function curveNotices(strip: Strip, options: NotchOptions = {}): readonly HemNotice[] {
  const { hemStage } = checkedOptions(options);
  const reach = hemReach(strip.edge, strip.bendRule.thickness, hemStage);
  return strip.curves.flatMap(({ radius, direction }, index): HemNotice[] => {
    if (radius >= reach || hemAtBend(direction, strip.hemFace) === 'opens') {
      return [];
    }
    const message =
      `Curve ${index + 1} has a radius of ${printLength(radius)}, less than the hem reaches into ` +
      `it, ${printLength(reach)}. Take a narrower hem, or cut it away there.`;
    return [{ code: 'curve too tight', curve: index + 1, radius, message }];
  });
}
