import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';

/**
 * Numbers lengths of sections such that those with one number can be trimmed to the same pieces.
 * @param every true numbers each by itself
 */
export function sectionColumns(box: Box, limits: Limits, every: boolean): Int32Array {
  const { kerf, narrowest, longestCut } = limits;
  const first = new Set([longestCut + kerf + 1]);
  for (const { length } of box.lays) {
    for (const rest of [0, 1, kerf + 1, kerf + narrowest]) first.add(length + rest);
  }
  const columns = new Int32Array(box.length + 1);
  for (let x = 1; x <= box.length; x++) {
    columns[x] = columns[x - 1] + (every || first.has(x) ? 1 : 0);
  }
  return columns;
}
