import type { Point } from '../outline.js';
import { cross, distance, dot, minus, point, turnedAbout } from '../point.js';

/** A figure laid on another as well as can be. */
export interface Placement {
  /** The points, moved and turned. */
  readonly points: readonly Point[];
  /** Greatest distance of a point from its partner. */
  readonly largest: number;
  /** Index of that point. */
  readonly worst: number;
}

/**
 * Lays `points` on `targets`, one to one, by the rotation and translation that
 * make the weighted sum of squared distances least: the centroids meet, and the
 * angle is that of the summed dot and cross products about them (Kabsch, Acta
 * Crystallographica A 32, 1976, in two dimensions; from memory).
 */
export function placeBest(
  points: readonly Point[],
  targets: readonly Point[],
  weights: readonly number[],
): Placement {
  const from = centroid(points, weights);
  const to = centroid(targets, weights);
  let [along, across] = [0, 0];
  points.forEach((p, index) => {
    const a = minus(p, from);
    const b = minus(targets[index] ?? to, to);
    const weight = weights[index] ?? 0;
    along += weight * dot(a, b);
    across += weight * cross(a, b);
  });
  const angle = Math.atan2(across, along);
  const shift = minus(to, from);
  const placed = points.map((p) => {
    const { x, y } = turnedAbout(p, from, angle);
    return point(x + shift.x, y + shift.y);
  });
  const off = placed.map((p, index) => distance(p, targets[index] ?? p));
  const largest = Math.max(0, ...off);
  return { points: placed, largest, worst: off.indexOf(largest) };
}

function centroid(points: readonly Point[], weights: readonly number[]): Point {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const sum = points.reduce(
    ({ x, y }, p, index) => {
      const share = (weights[index] ?? 0) / total;
      return point(x + share * p.x, y + share * p.y);
    },
    point(0, 0),
  );
  return sum;
}
