import type { RasterPoints } from './raster-points.js';

/**
 * How each extent divides in two by one cut: the part nearest the origin is a
 * point of at most half the extent, the other whatever point is left room for.
 */
export interface Division {
  /** For each point, the index of the largest point of at most half its extent. */
  readonly half: Int32Array;
  /** For each point i, where its own row of `beyond` begins. */
  readonly row: Int32Array;
  /** At `row[i] + j`, the index of the largest point that fits beside point j in point i. */
  readonly beyond: Uint16Array;
}

/** @param points fewer than 65,536 of them */
export function divisions({ at, below }: RasterPoints): Division {
  const half = new Int32Array(at.length);
  const row = new Int32Array(at.length);
  let total = 0;
  for (let i = 0; i < at.length; i++) {
    half[i] = below[at[i] >> 1];
    row[i] = total;
    total += half[i] + 1;
  }
  const beyond = new Uint16Array(total);
  for (let i = 0; i < at.length; i++) {
    for (let j = 0; j <= half[i]; j++) beyond[row[i] + j] = below[at[i] - at[j]];
  }
  return { half, row, beyond };
}
