import { toDegrees } from '../angle.js';
import type { Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { type CurvePart, curveParts } from './curve-parts.js';
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
 * The radius below which a formed curve gets relief snips, millimetres: the
 * `snipRadius` asked for, or else reach / strain.
 *
 * A hem that reaches off the wall's face by W has its free edge at r - W or
 * r + W round a curve of radius r, so that it is crushed or stretched by the
 * part W / r of its length. More than the allowed strain makes it buckle or
 * tear. A hem that is closed reaches off by its metal alone, so that only very
 * tight curves need snips. The thickness beside r is left out. Source: derived
 * here; the allowed strain is common practice.
 *
 * @throws StripError if the strain is not above 0, or the radius below 0.
 */
export function reliefRadius(strip: Strip, options: NotchOptions = {}): number {
  const { hemStage, allowedStrain, snipRadius } = checkedOptions(options);
  const reach = hemReach(strip.edge, strip.bendRule.thickness, hemStage);
  return snipRadius ?? reach / allowedStrain;
}

/** Snips nearer than this leave teeth that break off, millimetres (common practice). */
export const LEAST_SPACING = 2;

/**
 * The relief snips of a strip: through the hem to the hem line wherever a curve
 * is tighter than `reliefRadius`, at most 2 r strain apart, with one at either
 * end. None are nearer than `LEAST_SPACING`; a stretch shorter than that has
 * one in its middle.
 *
 * A snip relieves what lies above the 45 degree lines from its root
 * (Saint-Venant's principle), so that between two snips s apart the hem is
 * strained only up to a height of s / 2, and there by s / (2 r). That is the
 * allowed strain where s = 2 r strain, which is where the strip turns through
 * twice the strain, in radians, from snip to snip: so a curve of any shape is
 * divided into equal turns. At the radius of the limit s is 2 W, where the
 * triangles between the snips just reach the free edge. By the same principle
 * the free edge over a tight stretch shorter than 2 W, which turns through t,
 * is strained over 2 W, that is by t / 2: where that is no more than allowed
 * the stretch needs no snips.
 *
 * Where the curve opens the hem, a snip is a slit. Where it closes the hem, it
 * is a V that takes out what the strip turns through from snip to snip: half of
 * that to each side, as at a bend.
 *
 * Left out are snips inside a notch and at the ends of the strip.
 */
export function reliefSnips(
  strip: Strip,
  notches: readonly Notch[],
  options: NotchOptions = {},
): readonly ReliefSnip[] {
  const { edge, seam, developed } = strip;
  if (edge.notchDepth === 0) {
    return [];
  }
  const [start, end] = [seam.atStart, seam.atStart + developed];
  const isFree = ({ at }: ReliefSnip) =>
    at > start + LENGTH_TOLERANCE &&
    at < end - LENGTH_TOLERANCE &&
    notches.every(({ from, to }) => at < from || at > to);
  const snips: ReliefSnip[] = [];
  for (const snip of tightStretches(strip, options)
    .flatMap((stretch) => snipsOn(stretch, strip, options))
    .filter(isFree)) {
    const last = snips.at(-1)?.at ?? Number.NEGATIVE_INFINITY;
    if (snip.at >= last + LEAST_SPACING - LENGTH_TOLERANCE) {
      snips.push(snip);
    }
  }
  return snips;
}

/** Parts of curves, one after another without a gap, that bend one way. */
type Stretch = readonly CurvePart[];

/** The stretches that are tighter than the limit and strain the hem more than allowed. */
function tightStretches(strip: Strip, options: NotchOptions): readonly Stretch[] {
  const limit = reliefRadius(strip, options);
  const stretches: CurvePart[][] = [];
  for (const part of curveParts(strip).filter(({ radius }) => radius < limit)) {
    const last = stretches.at(-1);
    const before = last?.at(-1);
    const goesOn =
      before?.direction === part.direction && part.from - before.to <= LENGTH_TOLERANCE;
    if (last !== undefined && goesOn) {
      last.push(part);
    } else {
      stretches.push([part]);
    }
  }
  const { hemStage, allowedStrain } = checkedOptions(options);
  const spread = 2 * hemReach(strip.edge, strip.bendRule.thickness, hemStage);
  return stretches.filter(
    (stretch) => lengthOf(stretch) >= spread || turnOf(stretch) / 2 > allowedStrain,
  );
}

function lengthOf(stretch: Stretch): number {
  return (stretch.at(-1)?.to ?? 0) - (stretch[0]?.from ?? 0);
}

function turnOf(stretch: Stretch): number {
  return stretch.reduce((sum, { turn }) => sum + turn, 0);
}

function snipsOn(stretch: Stretch, strip: Strip, options: NotchOptions): readonly ReliefSnip[] {
  const [length, turn] = [lengthOf(stretch), turnOf(stretch)];
  const { allowedStrain } = checkedOptions(options);
  const enough = Math.ceil(turn / (2 * allowedStrain) - LENGTH_TOLERANCE);
  const pieces = Math.max(1, Math.min(enough, Math.floor(length / LEAST_SPACING)));
  const shares =
    length < LEAST_SPACING
      ? [0.5]
      : Array.from({ length: pieces + 1 }, (_, piece) => piece / pieces);
  const closes = stretch.some(({ direction }) => {
    return hemAtBend(direction, strip.hemFace) === 'closes';
  });
  // The least half-angle of a sharp bend through as much.
  const halfAngle = closes ? toDegrees(turn / pieces / 2) : 0;
  const depth = strip.edge.notchDepth;
  return shares.map((share) => ({ ...placeAtTurn(stretch, share * turn), depth, halfAngle }));
}

/** Where a stretch has turned through so many radians. */
function placeAtTurn(stretch: Stretch, wanted: number): { curve: number; at: number } {
  let left = wanted;
  for (const { turn, from, to, curve } of stretch) {
    if (left <= turn) {
      return { curve, at: from + (left / turn) * (to - from) };
    }
    left -= turn;
  }
  return { curve: stretch.at(-1)?.curve ?? 0, at: stretch.at(-1)?.to ?? 0 };
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
    const source = 'reckoned from the reach of the hem';
    return [{ code: 'curve too tight', curve: index + 1, radius, source, message }];
  });
}
