import type { Point } from '../outline.js';

/** An affine map, in the order of SVG: x' = a x + c y + e, y' = b x + d y + f. */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export function translation(x: number, y: number): Matrix {
  return { ...IDENTITY, e: x, f: y };
}

export function scaling(x: number, y: number): Matrix {
  return { ...IDENTITY, a: x, d: y };
}

/** The map that applies `inner` first, then `outer`, as nested transforms do. */
export function composed(outer: Matrix, inner: Matrix): Matrix {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** Where the map takes a point. */
export function mapPoint({ a, b, c, d, e, f }: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** Where the map takes a vector: like a point, but not moved. */
export function mapVector({ a, b, c, d }: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y, y: b * x + d * y };
}
