import { perimeter } from '../measure.js';
import type { Outline, Point } from '../outline.js';
import { distance } from '../point.js';
import { evenlySpaced } from './evenly-spaced.js';

/** Points on each outline at most, so that the work is bounded. */
const MOST_POINTS = 60_000;

/**
 * A distance, in millimetres, that no point of either outline is farther than
 * from the other outline. Points are taken on both a twelfth of `limit`
 * apart, so the figure is too large by no more than about that; it is Infinity
 * where it would be above `limit`.
 */
export function deviationBetween(a: Outline, b: Outline, limit: number): number {
  const spacing = Math.max(limit / 12, perimeter(a) / MOST_POINTS, perimeter(b) / MOST_POINTS);
  const [first, second] = [evenlySpaced(a, spacing), evenlySpaced(b, spacing)];
  const there = farthest(first, second, limit);
  const deviation = Math.max(there, there > limit ? there : farthest(second, first, limit));
  // Between two points one is never more than half a step from one of them.
  const bound = deviation + spacing / 2;
  return bound <= limit ? bound : Infinity;
}

/** More than the rows of squares that two outlines of the same size can lie in. */
const ROW = 2 ** 26;

/** The greatest distance from one of `points` to the nearest of `others`; Infinity above `limit`. */
function farthest(points: readonly Point[], others: readonly Point[], limit: number): number {
  const cells = new Map<number, Point[]>();
  const keyOf = ({ x, y }: Point) => Math.floor(x / limit) * ROW + Math.floor(y / limit);
  for (const point of others) {
    const key = keyOf(point);
    const cell = cells.get(key);
    if (cell === undefined) {
      cells.set(key, [point]);
    } else {
      cell.push(point);
    }
  }
  let worst = 0;
  for (const point of points) {
    const key = keyOf(point);
    let nearest = Infinity;
    for (let across = -1; across <= 1; across++) {
      for (let up = -1; up <= 1; up++) {
        for (const other of cells.get(key + across * ROW + up) ?? []) {
          nearest = Math.min(nearest, distance(point, other));
        }
      }
    }
    if (nearest > limit) {
      return Infinity;
    }
    worst = Math.max(worst, nearest);
  }
  return worst;
}
