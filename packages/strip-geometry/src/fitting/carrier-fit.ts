import type { Point } from '../outline.js';
import type { Sums } from './ring-of-points.js';

/** A straight line through a point, along a unit vector. */
export interface FittedLine {
  readonly middle: Point;
  readonly heading: Point;
}

export interface FittedCircle {
  readonly centre: Point;
  readonly radius: number;
}

/** Spreads of a stretch of points about their middle. */
function spreads({ count, x, y, xx, xy, yy }: Sums) {
  const middle = { x: x / count, y: y / count };
  return {
    middle,
    xx: xx - x * middle.x,
    xy: xy - x * middle.y,
    yy: yy - y * middle.y,
  };
}

/**
 * The line with the least sum of squared distances: through the middle, along
 * the axis of greatest spread. Either way along.
 */
export function fittedLine(sums: Sums): FittedLine {
  const { middle, xx, xy, yy } = spreads(sums);
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { middle, heading: { x: Math.cos(angle), y: Math.sin(angle) } };
}

/**
 * The circle x^2 + y^2 = 2 a x + 2 b y + c that the points come nearest to
 * solving, by least squares (Kasa's fit); undefined where they lie on a line.
 */
export function fittedCircle(sums: Sums): FittedCircle | undefined {
  const { count, x, y } = sums;
  const { middle, xx, xy, yy } = spreads(sums);
  const z = sums.xx + sums.yy;
  const xz = sums.xz - (x * z) / count;
  const yz = sums.yz - (y * z) / count;
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-12 * (xx + yy) ** 2)) {
    return undefined;
  }
  const a = (xz * yy - yz * xy) / determinant / 2;
  const b = (yz * xx - xz * xy) / determinant / 2;
  const c = z / count - 2 * a * middle.x - 2 * b * middle.y;
  const square = a * a + b * b + c;
  return square > 0 ? { centre: { x: a, y: b }, radius: Math.sqrt(square) } : undefined;
}
