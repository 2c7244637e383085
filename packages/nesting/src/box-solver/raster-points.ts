import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';

/**
 * Extents to which parts of a box can be cut without losing anything: ascending,
 * from 0 on.
 */
export interface RasterPoints {
  readonly at: Int32Array;
  /** For each extent from 0 to the box's, the index of the largest point that does not exceed it. */
  readonly below: Int32Array;
  /** For each extent, the index of the smallest point that is not less, or -1 beyond the last. */
  readonly above: Int32Array;
}

/**
 * The reduced raster points of one direction of a box (Scheithauer and Terno 1996,
 * "The G4-heuristic for the pallet loading problem", JORS 47; proven there for
 * placements, here used for the parts of guillotine cuts).
 *
 * Sums of extents are the normal points P. A part that stands beside others of
 * total y, in P, has room for `box - y`, of which only the largest point of P
 * below it, p(box - y), can be used. So points p(box - y) suffice: where a cut
 * parts such a rectangle into u and v, both of P, u may grow to p(box - y - v)
 * and v after it to what that leaves, and both are of the same kind. Where parts
 * must not grow beyond a reach, points p(reach - y) are needed besides.
 * @param extents of everything that may be cut, gross ticks, at least 1
 * @param box gross ticks
 * @param reach gross ticks beyond which no part may grow
 */
export function reducedRasterPoints(
  extents: Iterable<number>,
  box: number,
  reach = box,
): RasterPoints {
  const normal = normalPoints(extents, box);
  const largest = new Int32Array(box + 1);
  for (let x = 1; x <= box; x++) largest[x] = normal[x] === 1 ? x : largest[x - 1];
  const reduced = new Uint8Array(box + 1);
  reduced[0] = 1;
  for (const room of new Set([box, Math.min(box, reach)])) {
    for (let x = 0; x <= room; x++) if (normal[x] === 1) reduced[largest[room - x]] = 1;
  }
  return pointsAt(reduced);
}

/** Every sum of extents, each taken any number of times, up to the box: 1 where there is one. */
export function normalPoints(extents: Iterable<number>, box: number): Uint8Array {
  const normal = new Uint8Array(box + 1);
  normal[0] = 1;
  for (const extent of new Set(extents)) {
    for (let x = extent; x <= box; x++) if (normal[x - extent] === 1) normal[x] = 1;
  }
  return normal;
}

/** The points to which a box need be cut, along its length and along its width. */
export interface BoxRaster {
  readonly xs: RasterPoints;
  readonly ys: RasterPoints;
}

export function boxRaster(box: Box, { longestCut, kerf }: Limits): BoxRaster {
  const lays = laysWithin(box);
  const reach = longestCut + kerf;
  const lengths = lays.map(({ length }) => length);
  const widths = lays.map(({ width }) => width);
  return {
    xs: reducedRasterPoints(lengths, box.length, reach),
    ys: reducedRasterPoints(widths, box.width, reach),
  };
}

/** The ways to lie in which a piece is no larger than the box. */
export function laysWithin(box: Box): readonly BoxLay[] {
  return box.lays.filter(({ length, width }) => length <= box.length && width <= box.width);
}

/** The same points as far as they do not exceed an extent. */
export function upTo(points: RasterPoints, extent: number): RasterPoints {
  if (extent >= points.below.length - 1) return points;
  const marks = new Uint8Array(extent + 1);
  for (const point of points.at) if (point <= extent) marks[point] = 1;
  return pointsAt(marks);
}

/** The points where a marker is 1. */
function pointsAt(marks: Uint8Array): RasterPoints {
  const at: number[] = [];
  const below = new Int32Array(marks.length);
  const above = new Int32Array(marks.length);
  for (let x = 0; x < marks.length; x++) {
    above[x] = at.length;
    if (marks[x] === 1) at.push(x);
    below[x] = at.length - 1;
  }
  for (let x = marks.length - 1; x >= 0 && marks[x] === 0; x--) above[x] = -1;
  return { at: Int32Array.from(at), below, above };
}
