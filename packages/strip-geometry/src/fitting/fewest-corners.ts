import type { Point } from '../outline.js';
import { dot, minus, turnFrom } from '../point.js';

/**
 * Numbers of the corners of a polygon with few corners, all of them points of
 * the closed line through `points`, from which no point between two corners lies farther than
 * `tolerance` from the side there. Each side is drawn as far as it will go, in
 * one pass: the directions that pass near enough to all points so far are a
 * sector, which every further point narrows (the cone method of Williams,
 * "An efficient algorithm for the piecewise linear approximation of planar
 * curves", 1978).
 */
export function fewestCorners(points: readonly Point[], tolerance: number): readonly number[] {
  const size = points.length;
  const at = (number: number) => points[number % size] ?? { x: 0, y: 0 };
  const corners = [0];
  let from = 0;
  while (from < size) {
    from = farthestSide(at, from, size, tolerance);
    if (from < size) {
      corners.push(from);
    }
  }
  return corners;
}

/** The last point, no later than `size`, to which one side can be drawn. */
function farthestSide(
  at: (number: number) => Point,
  from: number,
  size: number,
  tolerance: number,
): number {
  const start = at(from);
  let best = from + 1;
  let axis: Point | undefined;
  let [least, most, reach] = [-Math.PI / 2, Math.PI / 2, 0];
  for (let number = from + 1; number <= size; number++) {
    const chord = minus(at(number), start);
    const away = Math.sqrt(dot(chord, chord));
    if (away <= tolerance) {
      if (reach === 0) {
        best = number;
        continue;
      }
      break;
    }
    axis ??= chord;
    const angle = turnFrom(axis, chord);
    if (away >= reach && angle >= least && angle <= most) {
      best = number;
    }
    // A line that runs back by more than the tolerance is no side.
    reach = Math.max(reach, away);
    if (reach - away > tolerance) {
      break;
    }
    const half = Math.asin(tolerance / away);
    [least, most] = [Math.max(least, angle - half), Math.min(most, angle + half)];
    if (least > most) {
      break;
    }
  }
  return best;
}
