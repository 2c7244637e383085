import { toRadians } from '../angle.js';
import type { Outline } from '../outline.js';
import { type PlacedChain, refinedChain } from './refine-chain.js';
import { type Link, segmentsOf } from './smooth-chain.js';
import { asFit, type Trace } from './trace.js';

/** Corners that turn out to turn less are smoothed if they can be: the first, or else the second. */
const FLAT_CORNERS = [toRadians(15), toRadians(5)];

/**
 * The fit that comes of a rough chain by least squares, with its flat corners
 * smoothed, or else as it is; undefined where none is within the tolerance.
 */
export function smoothFit(trace: Trace, rough: PlacedChain): Outline | undefined {
  const placed = refinedChain(rough, trace.ring);
  if (placed === undefined) {
    return undefined;
  }
  for (const least of FLAT_CORNERS) {
    const smoothed = withoutFlatCorners(placed, trace, least);
    const fitted = smoothed && asFit(trace, segmentsOf(smoothed.chain));
    if (fitted !== undefined) {
      return fitted;
    }
  }
  return asFit(trace, segmentsOf(placed.chain));
}

/** The chain with its nearly flat corners smoothed; undefined where it has none or it cannot be. */
function withoutFlatCorners(
  { chain, firsts }: PlacedChain,
  { ring }: Trace,
  least: number,
): PlacedChain | undefined {
  const isFlat = ({ corner, turn }: Link) => corner && Math.abs(turn) < least;
  if (!chain.links.some(isFlat)) {
    return undefined;
  }
  const links = chain.links.map((link) =>
    isFlat(link) ? { ...link, corner: false, turn: 0 } : link,
  );
  return refinedChain({ chain: { ...chain, links }, firsts }, ring);
}
