import type { Point } from '../outline.js';
import { along, distance, dot, minus } from '../point.js';
import type { PlacedChain } from './refine-chain.js';
import type { RingOfPoints } from './ring-of-points.js';
import { stations } from './smooth-chain.js';

/**
 * The corners whose tip lies farther than `limit` from the trace: there the
 * trace cuts the corner off, as one of coarse steps does.
 */
export function bluntCorners(
  { chain }: PlacedChain,
  ring: RingOfPoints,
  corners: readonly number[],
  limit: number,
): readonly number[] {
  const tips = stations(chain).slice(1);
  return chain.links.flatMap((link, index) => {
    const tip = tips[index];
    if (!link.corner || tip === undefined) {
      return [];
    }
    const away = (number: number) => distanceToSide(tip, ring.at(number), ring.at(number + 1));
    const nearest = corners.reduce((best, corner) =>
      distance(ring.at(corner), tip) < distance(ring.at(best), tip) ? corner : best,
    );
    const aways = Array.from({ length: 12 }, (_, step) => away(nearest - 6 + step));
    return Math.min(...aways) > limit ? [nearest] : [];
  });
}

function distanceToSide(p: Point, from: Point, to: Point): number {
  const side = minus(to, from);
  const share = dot(minus(p, from), side) / Math.max(dot(side, side), Number.MIN_VALUE);
  return distance(p, along(from, side, Math.min(Math.max(share, 0), 1)));
}

/** The corners with a short stretch across in place of each blunt one. */
export function withCutCorners(
  ring: RingOfPoints,
  corners: readonly number[],
  blunt: readonly number[],
): readonly number[] {
  const cut = corners
    .flatMap((corner) => (blunt.includes(corner) ? [corner - 1, corner + 1] : [corner]))
    .map((corner) => (corner + ring.size) % ring.size);
  return [...new Set(cut)].sort((a, b) => a - b);
}
