import type { Point } from './outline.js';

/** A point, or a vector, from its two coordinates. */
export function point(x: number, y: number): Point {
  return { x, y };
}

/** The vector from `b` to `a`. */
export function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** The point that lies `distance` from `start` along the unit vector `heading`. */
export function along(start: Point, heading: Point, distance: number): Point {
  return { x: start.x + heading.x * distance, y: start.y + heading.y * distance };
}

/** Product of the lengths and the cosine of the angle between. */
export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Product of the lengths and the sine of the angle from `a` to `b`, positive anticlockwise. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

/** Straight distance between two points. */
export function distance(a: Point, b: Point): number {
  const [x, y] = [a.x - b.x, a.y - b.y];
  // Much faster than Math.hypot, which guards against lengths that no outline has.
  return Math.sqrt(x * x + y * y);
}

/** The vector turned a quarter anticlockwise: what lies to the left of a heading. */
export function leftOf(heading: Point): Point {
  return { x: -heading.y, y: heading.x };
}

/** The point turned about `centre` by `angle` radians, anticlockwise. */
export function turnedAbout(p: Point, centre: Point, angle: number): Point {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const { x, y } = minus(p, centre);
  return { x: centre.x + x * cosine - y * sine, y: centre.y + x * sine + y * cosine };
}

/** The point at `radius` from `centre` in the direction `angle` radians from the x axis. */
export function polar(centre: Point, radius: number, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** The angle turned through from heading `a` to heading `b`, in (-pi, pi], positive to the left. */
export function turnFrom(a: Point, b: Point): number {
  return Math.atan2(cross(a, b), dot(a, b));
}
