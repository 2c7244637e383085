import type { Point } from '../outline.js';
import { minus } from '../point.js';
import { type Centring, centre, longest } from './centring.js';
import { further, type Motion, moved, PLACEMENT } from './motion.js';
import { placeBest } from './place-best.js';

/** A figure laid on another as near as can be. */
export interface Placement {
  /** The points, moved and turned. */
  readonly points: readonly Point[];
  /** Greatest distance of a point from its partner. */
  readonly largest: number;
  /** Index of that point. */
  readonly worst: number;
}

/** Distances below this count as none, millimetres. */
const NOTHING = 1e-9;

/** What turning by a radian counts beside the distances: next to nothing. */
const STILL = 0.001;

/**
 * Lays `points` on `targets`, one to one, by the rotation and translation that
 * make the largest distance of a point from its partner least, to a few parts in
 * a thousand, starting from the least squares by `weights`.
 */
export function placeClosest(
  points: readonly Point[],
  targets: readonly Point[],
  weights: readonly number[],
): Placement {
  const offsets = (motion: Motion) =>
    moved(points, motion).map((p, index) => minus(p, targets[index] ?? p));
  const problem: Centring<Motion> = {
    size: PLACEMENT,
    offsets,
    effects: (motion) => moved(points, motion).map(effectOfPlacing),
    // Where turning does the same as moving, as for points in one place, there is no turning.
    wishes: (_, bound) => [{ row: Float64Array.of(0, 0, 1), off: 0, weight: STILL / bound ** 2 }],
    changed: further,
  };
  let best = placeBest(points, targets, weights);
  let least = longest(offsets(best));
  if (least > NOTHING) {
    for (const { state } of centre(problem, best, { least: 0, shrink: 0.6 })) {
      const largest = longest(offsets(state));
      if (largest < least) {
        [best, least] = [state, largest];
      }
    }
  }
  const lengths = offsets(best).map(({ x, y }) => Math.hypot(x, y));
  return { points: moved(points, best), largest: least, worst: lengths.indexOf(least) };
}

/** What moving along x, along y, and turning about the origin by a radian do to a point. */
export function effectOfPlacing({ x, y }: Point): { x: Float64Array; y: Float64Array } {
  return { x: Float64Array.of(1, 0, -y), y: Float64Array.of(0, 1, x) };
}
