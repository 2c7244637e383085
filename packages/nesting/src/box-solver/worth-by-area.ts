import type { Box } from '../pattern/box.js';
import { coinsPerTick } from '../pattern/kept-value.js';
import type { KeepRule } from '../problem.js';
import { laysWithin } from './raster-points.js';
import { ROUNDING } from './rounding.js';

/**
 * What no pattern is worth more than, since its pieces and remnants take up no more than the area of the box.
 * @param rule for keeping remnants, if there is one
 * @param coin what a coin of kept remnants is worth in the unit of the values
 */
export function worthByArea(
  box: Box,
  values: ArrayLike<number>,
  rule?: KeepRule,
  coin = 0,
): number {
  const perTick = laysWithin(box).map(
    ({ piece, length, width }) => values[piece] / (length * width),
  );
  const asRemnant = rule === undefined ? 0 : coinsPerTick(rule) * coin;
  const area = box.length * box.width;
  return Math.max(area * asRemnant, area * Math.max(0, ...perTick) * (1 + ROUNDING));
}
