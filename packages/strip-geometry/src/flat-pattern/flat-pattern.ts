import { toRadians } from '../angle.js';
import type { HemNotice, Notch } from '../notches/notch.js';
import type { NotchOptions } from '../notches/notch-options.js';
import { notchesOf, notchNotices } from '../notches/notches.js';
import { curveNotices, type ReliefSnip, reliefSnips } from '../notches/relief-snips.js';
import type { Point } from '../outline.js';
import { point } from '../point.js';
import type { EndCut } from '../seams/seam.js';
import type { FormedCurve, Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { deepestOf, depthAt, type EdgeProfile } from './edge-profile.js';
import { labelsOf, type PatternLabel } from './labels.js';
import { type ScribeLine, scribeLines } from './scribe-lines.js';

/** A straight line across or along the strip. */
export interface PatternLine {
  readonly from: Point;
  readonly to: Point;
}

/** A bend on the flat pattern. */
export interface PatternBend {
  /** 1 for the first bend from the square end. */
  readonly number: number;
  readonly direction: 'in' | 'out';
  /** Degrees bent through. */
  readonly angle: number;
  /** The middle of the bend, from the square end. */
  readonly at: number;
  /** Where the metal starts to curve and where it is straight again. */
  readonly zone: { readonly from: number; readonly to: number };
  /** The bend line, from the hem line to the cutting edge. */
  readonly line: PatternLine;
}

/**
 * The flat pattern of a strip: what to cut and what to mark, as data. Drawing
 * it is the caller's business.
 *
 * Coordinates in millimetres: x from the square end, y from the raw edge that
 * is hemmed, up to the cutting edge at y = `width`. So a marking gauge set to a
 * fold line's y runs along the edge at y = 0.
 *
 * Drawn with x to the right and y downward, as it stands on the bench with its
 * cutting edge below, the pattern shows the outside of the cutter: bends marked
 * `in` fold away from the viewer, and a hem on the outside folds toward the
 * viewer. The outline is then the cookie's seen from above.
 */
export interface FlatPattern {
  readonly length: number;
  readonly width: number;
  /** The metal that is left: corners in order, along the hemmed edge first. Inside the blank. */
  readonly outline: readonly Point[];
  /** Slits: cuts that take no metal away. Each starts on the hemmed edge. */
  readonly slits: readonly PatternLine[];
  readonly scribeLines: readonly ScribeLine[];
  readonly bends: readonly PatternBend[];
  readonly curves: readonly FormedCurve[];
  /** The stretch of hem that is left open for the tab, where there is one. */
  readonly openHem: { readonly from: number; readonly to: number } | undefined;
  readonly notches: readonly Notch[];
  readonly snips: readonly ReliefSnip[];
  readonly labels: readonly PatternLabel[];
  /** What the user should know before cutting. */
  readonly notices: readonly HemNotice[];
}

/**
 * The flat pattern of a strip, with a V-notch at every bend, relief snips on
 * tight curves and the end cuts of its seam. A notch that reaches past the seam
 * is cut at the other end as well, where the hem goes on.
 *
 * @throws StripError if an option is out of range.
 */
export function flatPattern(strip: Strip, options: NotchOptions = {}): FlatPattern {
  const { length, width, edge, seam, curves } = strip;
  const notches = notchesOf(strip, options);
  const snips = reliefSnips(strip, notches, options);
  const endCuts = seam.cuts(strip);
  const hemEnds = profilesOn('hemmed', endCuts, 0);
  const hemmed = deepestOf(
    [
      ...notches.flatMap((notch) => notchProfiles(notch, strip)),
      ...sliverProfiles(strip, deepestOf(hemEnds, length)),
      ...snips.map(({ at, depth, halfAngle }) => vProfile(at, depth, halfAngle)),
      ...hemEnds,
    ],
    length,
  );
  const cutting = deepestOf(profilesOn('cutting', endCuts, width), length);
  const openHem =
    edge.takesTab && seam.openHem > 0
      ? { from: seam.atStart, to: Math.min(seam.atStart + seam.openHem, length) }
      : undefined;
  const bends = strip.bends.map(({ number, direction, angle, at, from, to }): PatternBend => {
    return { number, direction, angle, at, zone: { from, to }, line: across(strip, hemmed, at) };
  });
  return {
    length,
    width,
    outline: [...hemmed, ...cutting.map(({ x, y }) => point(x, width - y)).reverse()],
    slits: [...notches, ...snips].flatMap((cut) => slitOf(cut, hemmed)),
    scribeLines: scribeLines(strip, hemmed, cutting),
    bends,
    curves,
    openHem,
    notches,
    snips,
    labels: labelsOf(strip, bends, openHem),
    notices: [...notchNotices(strip, notches), ...curveNotices(strip, options)],
  };
}

/** A V of so many degrees to each side; nothing for a slit. */
function vProfile(at: number, depth: number, halfAngle: number): EdgeProfile {
  const half = depth * Math.tan(toRadians(halfAngle));
  return [point(at - half, 0), point(at, depth), point(at + half, 0)];
}

/** A notch, and the same once round before and after it, where the strip goes on past the seam. */
function notchProfiles(
  { at, depth, halfAngle, from, to }: Notch,
  { developed, length }: Strip,
): EdgeProfile[] {
  return [-developed, 0, developed]
    .filter((by) => from + by < length && to + by > 0)
    .map((by) => vProfile(at + by, depth, halfAngle));
}

/**
 * Where the last bend is at the seam and the hem ends there, the sliver of hem
 * between the middle of the bend and that end, which would only stick out.
 */
function sliverProfiles(
  { seam, developed, bends, edge }: Strip,
  hemEnds: EdgeProfile,
): readonly EdgeProfile[] {
  const end = seam.atStart + developed;
  const last = bends.at(-1);
  const beyond = end + 2 * LENGTH_TOLERANCE;
  const isAtSeam = last !== undefined && last.to > end - LENGTH_TOLERANCE;
  return isAtSeam && depthAt(hemEnds, beyond) >= edge.notchDepth
    ? [[point(last.at, edge.notchDepth), point(beyond, edge.notchDepth)]]
    : [];
}

function profilesOn(
  edge: EndCut['edge'],
  cuts: readonly EndCut[],
  edgeAt: number,
): readonly EdgeProfile[] {
  return cuts
    .filter((cut) => cut.edge === edge)
    .map(({ polygon }) => polygon.map(({ x, y }) => point(x, Math.abs(y - edgeAt))));
}

/** The slit of a notch or snip that takes no metal away, where there is metal to slit. */
function slitOf(
  { at, depth, halfAngle }: Notch | ReliefSnip,
  hemmed: EdgeProfile,
): readonly PatternLine[] {
  const top = depthAt(hemmed, at);
  return halfAngle === 0 && top < depth - LENGTH_TOLERANCE
    ? [{ from: point(at, top), to: point(at, depth) }]
    : [];
}

/** The bend line at a place, from the hem line to the cutting edge. */
function across({ edge, width }: Strip, hemmed: EdgeProfile, at: number): PatternLine {
  const top = Math.max(edge.notchDepth, depthAt(hemmed, at));
  return { from: point(at, top), to: point(at, width) };
}
