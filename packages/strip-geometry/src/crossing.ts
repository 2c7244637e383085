import type { Line, Point } from './outline.js';
import { along, cross, distance, dot, minus } from './point.js';
import { LENGTH_TOLERANCE } from './tolerance.js';

/**
 * Whether two straight sides share a point, or come nearer than the tolerance.
 * Sides that follow one another share a corner and are not for this function.
 */
export function sidesTouch(a: Line, b: Line): boolean {
  return sidesCross(a, b) || isOn(a.from, b) || isOn(a.to, b) || isOn(b.from, a) || isOn(b.to, a);
}

function sidesCross(a: Line, b: Line): boolean {
  const side = ({ from, to }: Line, p: Point) => Math.sign(cross(minus(to, from), minus(p, from)));
  return side(a, b.from) * side(a, b.to) < 0 && side(b, a.from) * side(b, a.to) < 0;
}

/** Whether the point lies on the side, ends included. */
export function isOn(p: Point, { from, to }: Line): boolean {
  const whole = minus(to, from);
  const length = Math.hypot(whole.x, whole.y);
  const heading = { x: whole.x / length, y: whole.y / length };
  const reached = Math.min(Math.max(dot(minus(p, from), heading), 0), length);
  return distance(p, along(from, heading, reached)) <= LENGTH_TOLERANCE;
}
