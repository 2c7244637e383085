import type { Point } from '../outline.js';
import { cross, dot, minus, point } from '../point.js';
import { type Motion, moved } from './motion.js';

/**
 * The motion that lays `points` on `targets`, one to one, with the least
 * weighted sum of squared distances: the centroids meet, and the angle is that
 * of the summed dot and cross products about them (Kabsch, Acta
 * Crystallographica A 32, 1976, in two dimensions; from memory).
 */
export function placeBest(
  points: readonly Point[],
  targets: readonly Point[],
  weights: readonly number[],
): Motion {
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
  const [turned = from] = moved([from], { angle, x: 0, y: 0 });
  return { angle, ...minus(to, turned) };
}

function centroid(points: readonly Point[], weights: readonly number[]): Point {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return points.reduce(
    ({ x, y }, p, index) => {
      const share = (weights[index] ?? 0) / total;
      return point(x + share * p.x, y + share * p.y);
    },
    point(0, 0),
  );
}
