import type { Point } from '../outline.js';
import { along, distance, leftOf, minus } from '../point.js';

/**
 * The third corner of a triangle, `fromA` from `a` and `fromB` from `b`, to
 * the left of the straight way from `a` to `b`. The three lengths must be able
 * to close. The centre of a circle that touches two others is such a corner.
 */
export function apex(a: Point, fromA: number, b: Point, fromB: number): Point {
  const base = distance(a, b);
  const heading = { x: minus(b, a).x / base, y: minus(b, a).y / base };
  const foot = (base + ((fromA - fromB) * (fromA + fromB)) / base) / 2;
  const height = Math.sqrt((fromA - foot) * (fromA + foot));
  return along(along(a, heading, foot), leftOf(heading), height);
}

/** Where circles that touch from outside do so: `radius` from `centre` towards `other`. */
export function towards(centre: Point, other: Point, radius: number): Point {
  const share = radius / distance(centre, other);
  return {
    x: centre.x + (other.x - centre.x) * share,
    y: centre.y + (other.y - centre.y) * share,
  };
}
