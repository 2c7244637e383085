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

/** Snips nearer than this leave teeth that break off, millimetres (common practice). */
export const LEAST_SPACING = 2;

/**
 * The relief snips of a strip: through the hem to the hem line on every curve
 * tighter than `reliefRadius`, at equal distances of at most 2 r strain, with
 * one at either end of the curve. None are nearer than `LEAST_SPACING`; a curve
 * shorter than that has one in its middle.
 *
 * A snip relieves what lies above the 45 degree lines from its root
 * (Saint-Venant's principle), so that between two snips s apart the hem is
 * strained only up to a height of s / 2, and there by s / (2 r). That is the
 * allowed strain where s = 2 r strain. At the radius of the limit s is 2 W,
 * where the triangles between the snips just reach the free edge. By the same
 * principle the free edge over a stretch of curves shorter than 2 W, which
 * turns through t, is strained over 2 W, that is by t / 2: where that is no
 * more than allowed the stretch needs no snips.
 *
 * Where the curve opens the hem, a snip is a slit. Where it closes the hem, it
 * is a V that takes out what the piece turns through: half of that to each
 * side, as at a bend.
 *
 * Left out are snips inside a notch and at the ends of the strip.
 */
export function reliefSnips(
  strip: Strip,
  notches: readonly Notch[],
  options: NotchOptions = {},
): readonly ReliefSnip[] {
  const { allowedStrain } = checkedOptions(options);
  const { curves, edge, hemFace, seam, developed } = strip;
  const [start, end] = [seam.atStart, seam.atStart + developed];
  const strained = strainedCurves(strip, options);
  const snips: ReliefSnip[] = [];
  const isFree = (at: number) =>
    at > start + LENGTH_TOLERANCE &&
    at < end - LENGTH_TOLERANCE &&
    notches.every(({ from, to }) => at < from || at > to) &&
    at >= (snips.at(-1)?.at ?? Number.NEGATIVE_INFINITY) + LEAST_SPACING - LENGTH_TOLERANCE;

  curves.forEach((curve, index) => {
    if (!strained[index]) {
      return;
    }
    const places = placesOn(curve, allowedStrain);
    const closes = hemAtBend(curve.direction, hemFace) === 'closes';
    const pieces = Math.max(places.length - 1, 1);
    const halfAngle = closes ? halfAngleOf(curve, pieces, strip, options) : 0;
    for (const at of places.filter(isFree)) {
      snips.push({ curve: index + 1, at, depth: edge.notchDepth, halfAngle });
    }
  });
  return snips;
}

/** Which curves strain the hem more than allowed. */
function strainedCurves(strip: Strip, options: NotchOptions): readonly boolean[] {
  const { allowedStrain, hemStage } = checkedOptions(options);
  const { curves, edge, bendRule } = strip;
  const limit = reliefRadius(strip, options);
  const spread = 2 * hemReach(edge, bendRule.thickness, hemStage);
  return stretchesOf(curves).flatMap((stretch) => {
    const length = (stretch.at(-1)?.to ?? 0) - (stretch[0]?.from ?? 0);
    const turn = toRadians(stretch.reduce((sum, { angle }) => sum + angle, 0));
    const spreads = length < spread && turn / 2 <= allowedStrain;
    return stretch.map(({ radius }) => radius < limit && !spreads);
  });
}

/** Curves in groups that follow each other without a flat and bend the same way. */
function stretchesOf(curves: readonly FormedCurve[]): readonly (readonly FormedCurve[])[] {
  const stretches: FormedCurve[][] = [];
  for (const curve of curves) {
    const last = stretches.at(-1);
    const before = last?.at(-1);
    const goesOn =
      before?.direction === curve.direction && curve.from - before.to <= LENGTH_TOLERANCE;
    if (last !== undefined && goesOn) {
      last.push(curve);
    } else {
      stretches.push([curve]);
    }
  }
  return stretches;
}

function placesOn({ from, to, radius }: FormedCurve, allowedStrain: number): readonly number[] {
  const length = to - from;
  if (length < LEAST_SPACING) {
    return [(from + to) / 2];
  }
  const enough = Math.ceil(length / (2 * radius * allowedStrain) - LENGTH_TOLERANCE);
  const pieces = Math.min(enough, Math.floor(length / LEAST_SPACING));
  return Array.from({ length: pieces + 1 }, (_, piece) => from + (length * piece) / pieces);
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
