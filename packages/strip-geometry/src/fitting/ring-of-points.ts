import type { Point } from '../outline.js';

/** Sums over a stretch of points, from which lines and circles are fitted. */
export interface Sums {
  readonly count: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  /** Of x (x^2 + y^2), y (x^2 + y^2) and (x^2 + y^2)^2. */
  readonly xz: number;
  readonly yz: number;
}

/** Points round a closed line. Numbers past the last start again from the first. */
export class RingOfPoints {
  readonly size: number;
  readonly #points: readonly Point[];
  /** Sums over the points before each number, for two turns. */
  readonly #before: readonly Sums[];

  constructor(points: readonly Point[]) {
    this.size = points.length;
    this.#points = points;
    const before: Sums[] = [];
    let sums: Sums = { count: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0, xz: 0, yz: 0 };
    before.push(sums);
    for (let number = 0; number < 2 * points.length; number++) {
      sums = withPoint(sums, this.at(number));
      before.push(sums);
    }
    this.#before = before;
  }

  /** The point with this number, which may be negative or past the last. */
  at(number: number): Point {
    const point = this.#points[number] ?? this.#points[modulo(number, this.size)];
    if (point === undefined) {
      throw new Error('a ring has points');
    }
    return point;
  }

  /** Sums over the points from `first` up to and with `last`, at most one turn. */
  sums(first: number, last: number): Sums {
    const shift = Math.floor(first / this.size) * this.size;
    const until = this.#before[last + 1 - shift];
    const from = this.#before[first - shift];
    if (until === undefined || from === undefined) {
      throw new Error('more than a turn of points');
    }
    return {
      count: until.count - from.count,
      x: until.x - from.x,
      y: until.y - from.y,
      xx: until.xx - from.xx,
      xy: until.xy - from.xy,
      yy: until.yy - from.yy,
      xz: until.xz - from.xz,
      yz: until.yz - from.yz,
    };
  }
}

function withPoint(sums: Sums, { x, y }: Point): Sums {
  const z = x * x + y * y;
  return {
    count: sums.count + 1,
    x: sums.x + x,
    y: sums.y + y,
    xx: sums.xx + x * x,
    xy: sums.xy + x * y,
    yy: sums.yy + y * y,
    xz: sums.xz + x * z,
    yz: sums.yz + y * z,
  };
}

function modulo(number: number, size: number): number {
  return ((number % size) + size) % size;
}
