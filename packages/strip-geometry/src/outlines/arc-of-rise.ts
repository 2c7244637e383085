import type { Arc, Point } from '../outline.js';
import { distance, leftOf, minus } from '../point.js';
import { arcBetween } from '../segment.js';

/**
 * The arc from `from` to `to` that swells to the right of the straight line by
 * `rise` times its length (a rise of 0.5 is a half circle). Above 0, at most 0.5.
 */
export function arcOfRise(from: Point, to: Point, rise: number): Arc {
  const chord = distance(from, to);
  const height = rise * chord;
  const radius = (chord ** 2 / 4 + height ** 2) / (2 * height);
  const inward = leftOf(minus(to, from));
  const apart = (radius - height) / chord;
  const centre = {
    x: (from.x + to.x) / 2 + inward.x * apart,
    y: (from.y + to.y) / 2 + inward.y * apart,
  };
  return arcBetween(from, to, centre, 'anticlockwise');
}
