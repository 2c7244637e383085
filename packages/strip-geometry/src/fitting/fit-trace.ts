import { toRadians } from '../angle.js';
import { checkOutline } from '../check-outline.js';
import { bounds, perimeter } from '../measure.js';
import type { Outline } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { lengthOf } from '../segment.js';
import { moved } from '../transform.js';
import { printLength } from '../wording.js';
import { bluntCorners, withCutCorners } from './blunt-corners.js';
import { findCorners } from './corners.js';
import { deviationBetween } from './deviation.js';
import { evenlySpaced } from './evenly-spaced.js';
import { type PlacedChain, refinedChain } from './refine-chain.js';
import { RingOfPoints } from './ring-of-points.js';
import { roughChain } from './rough-chain.js';
import { type Link, segmentsOf } from './smooth-chain.js';

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

/** Distance between the points that are fitted, and the bounds of their number. */
const USUAL_SPACING = 0.4;
const FEWEST_POINTS = 400;
const MOST_POINTS = 1600;

/** An outline of no more segments is few pieces already. */
const FEW_ALREADY = 8;

/** Shares of the tolerance that are tried for the rough division, loosest first. */
const SHARES = [0.9, 0.75, 0.6, 0.48, 0.38, 0.3, 0.22, 0.15, 0.1];

/** A corner whose tip lies this share of the tolerance off the trace is cut off. */
const BLUNT = 0.7;

/** Corners are looked for with arms of the usual length, and if need be with shorter ones. */
const ARMS = [1, 0.5];

/** How many of them are tried before corners are taken to be cut off. */
const LOOSE = 5;

/** Corners that turn out to turn less are smoothed if they can be: the first, or else the second. */
const FLAT_CORNERS = [toRadians(15), toRadians(5)];

/**
 * The outline as a few lines and arcs, for one that was traced as hundreds of
 * tiny segments. They run smoothly into each other except where the direction
 * of the trace really breaks, by about 10 degrees or more. No point of either
 * line is farther than `tolerance` millimetres from the other; this is measured
 * on the result. An outline of 8 segments or fewer is returned as it is, and so
 * is one for which no such line with fewer segments is found.
 *
 * @throws OutlineError `out of range` for a tolerance that is not above 0.
 */
export function fitTrace(outline: Outline, tolerance: number = FITTING_TOLERANCE): Outline {
  if (!(tolerance > 0 && Number.isFinite(tolerance))) {
    const message = `"tolerance" must be a length above 0 mm; got ${printLength(tolerance)}.`;
    throw new OutlineError('out of range', message, 'tolerance');
  }
  if (outline.segments.length <= FEW_ALREADY) {
    return outline;
  }
  const { left, right, bottom, top } = bounds(outline);
  const middle = { x: (left + right) / 2, y: (bottom + top) / 2 };
  const centred = moved(outline, { x: -middle.x, y: -middle.y });
  const fitted = fitCentred(centred, tolerance);
  return fitted === undefined ? outline : moved(fitted, middle);
}

function fitCentred(outline: Outline, tolerance: number): Outline | undefined {
  const length = perimeter(outline);
  const count = Math.min(Math.max(length / USUAL_SPACING, FEWEST_POINTS), MOST_POINTS);
  const spacing = length / count;
  const ring = new RingOfPoints(evenlySpaced(outline, spacing));
  const reach = Math.min(Math.max(length / 80, 2), 5);
  const [usual, ...others] = ARMS.map((share) => {
    const arm = Math.round((share * reach) / spacing);
    return findCorners(ring, Math.max(Math.min(arm, Math.floor(ring.size / 12)), 4));
  });
  const isNew = (corners: readonly number[]) => corners.join() !== usual?.join();
  const guesses = [...(usual ? [usual] : []), ...others.filter(isNew)];
  for (const corners of guesses) {
    for (const share of SHARES.slice(0, LOOSE)) {
      const { fitted } = refinedFit(outline, tolerance, ring, corners, share * tolerance);
      if (fitted !== undefined) {
        return fitted;
      }
    }
  }
  // Perhaps the trace cuts its corners off, so that each wants a short line across.
  for (const corners of guesses) {
    let cut = corners;
    for (const share of SHARES.filter((_, index) => index % 2 === 0)) {
      const first = refinedFit(outline, tolerance, ring, cut, share * tolerance);
      const blunt = first.placed ? bluntCorners(first.placed, ring, cut, BLUNT * tolerance) : [];
      cut = withCutCorners(ring, cut, blunt);
      const { fitted } = refinedFit(outline, tolerance, ring, cut, share * tolerance);
      if (fitted !== undefined) {
        return fitted;
      }
    }
  }
  return undefined;
}

/** What comes of one rough division: the best chain, and the fit if it will do. */
function refinedFit(
  outline: Outline,
  tolerance: number,
  ring: RingOfPoints,
  corners: readonly number[],
  roughTolerance: number,
): { readonly placed?: PlacedChain | undefined; readonly fitted?: Outline | undefined } {
  const rough = roughChain(ring, corners, roughTolerance);
  if (rough === undefined || rough.chain.links.length >= outline.segments.length) {
    return {};
  }
  const placed = refinedChain(rough, ring);
  return { placed, fitted: placed && firstWithin(outline, tolerance, placed, ring) };
}

/** The fit with its flat corners smoothed, or else as it is, if it is within the tolerance. */
function firstWithin(
  outline: Outline,
  tolerance: number,
  placed: PlacedChain,
  ring: RingOfPoints,
): Outline | undefined {
  const smoothed = FLAT_CORNERS.map((angle) => withoutFlatCorners(placed, ring, angle));
  for (const candidate of [...smoothed, placed]) {
    const fitted = candidate && { ...outline, segments: segmentsOf(candidate.chain) };
    if (
      fitted !== undefined &&
      fitted.segments.length < outline.segments.length &&
      deviationBetween(outline, fitted, tolerance) <= tolerance &&
      isSound(fitted)
    ) {
      return fitted;
    }
  }
  return undefined;
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

/** The chain with its nearly flat corners smoothed; undefined where it has none or it cannot be. */
function withoutFlatCorners(
  placed: PlacedChain,
  ring: RingOfPoints,
  least: number,
): PlacedChain | undefined {
  const { chain, firsts } = placed;
  const isFlat = ({ corner, turn }: Link) => corner && Math.abs(turn) < least;
  if (!chain.links.some(isFlat)) {
    return undefined;
  }
  const links = chain.links.map((link) =>
    isFlat(link) ? { ...link, corner: false, turn: 0 } : link,
  );
  return refinedChain({ chain: { ...chain, links }, firsts }, ring);
}
