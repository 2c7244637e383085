import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';
import type { Effort } from './effort.js';
import { boxRaster } from './raster-points.js';

/**
 * Shares the work that all boxes of a pricer may make among them: small ones get what they ask for,
 * large ones the same of what is left.
 * @param rules for each box, the rule for keeping its remnants, if there is one
 * @returns the effort for each box by itself
 */
export function shareEffort(
  boxes: readonly Box[],
  limits: Limits,
  rules: readonly (KeepRule | undefined)[],
  effort: Effort,
): Effort {
  const { mostCells, mostCellsInAll = Number.POSITIVE_INFINITY, ...others } = effort;
  const everyTick = others.everyTick ?? true;
  const asked = boxes.map((box, b) =>
    everyTick && (limits.narrowest > 1 || rules[b] !== undefined)
      ? (box.length + 1) * (box.width + 1)
      : rasterCells(box, limits),
  );
  asked.sort((a, b) => a - b);
  let left = mostCellsInAll;
  for (const [done, cells] of asked.entries()) {
    const share = Math.floor(left / (asked.length - done));
    if (cells > share) return { ...others, mostCells: Math.min(mostCells, Math.max(1, share)) };
    left -= cells;
  }
  return { ...others, mostCells };
}

function rasterCells(box: Box, limits: Limits): number {
  const { xs, ys } = boxRaster(box, limits);
  return xs.at.length * ys.at.length;
}
