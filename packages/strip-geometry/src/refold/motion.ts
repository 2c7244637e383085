import type { Point } from '../outline.js';
import { point } from '../point.js';

/** A turn about the origin by `angle` radians, anticlockwise, and then a move along x and y. */
export interface Motion {
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

/** How many unknowns a change of a motion has: along x, along y, and the angle. */
export const PLACEMENT = 3;

/** The points, turned and moved. */
export function moved(points: readonly Point[], { angle, x, y }: Motion): Point[] {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return points.map((p) => point(cosine * p.x - sine * p.y + x, sine * p.x + cosine * p.y + y));
}

/** The motion, and after it a share of `change`: along x, along y, and about the origin. */
export function further(
  { angle, x, y }: Motion,
  [alongX = 0, alongY = 0, about = 0]: ArrayLike<number> & Iterable<number>,
  share: number,
): Motion {
  const [at = point(0, 0)] = moved([point(x, y)], { angle: share * about, x: 0, y: 0 });
  return {
    angle: angle + share * about,
    x: at.x + share * alongX,
    y: at.y + share * alongY,
  };
}
