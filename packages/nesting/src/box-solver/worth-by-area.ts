import type { Box } from '../pattern/box.js';
import { laysWithin } from './raster-points.js';
import { ROUNDING } from './rounding.js';

/** What no pattern is worth more than, since its pieces take up no more than the area of the box. */
export function worthByArea(box: Box, values: ArrayLike<number>): number {
  const perTick = laysWithin(box).map(
    ({ piece, length, width }) => values[piece] / (length * width),
  );
  return box.length * box.width * Math.max(0, ...perTick) * (1 + ROUNDING);
}
