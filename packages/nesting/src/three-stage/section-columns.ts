import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';

/**
 * Numbers lengths of sections such that those with one number can be trimmed to the same pieces.
 * @param own by length, 1 where one is to have a number by itself, and to share it with longer ones that are not;
 *   absent where pieces alone say that
 */
export function sectionColumns(box: Box, limits: Limits, own?: Uint8Array): Int32Array {
  const { kerf, narrowest, longestCut } = limits;
  const first = new Set([longestCut + kerf + 1]);
  for (const { length } of box.lays) {
    for (const rest of [0, 1, kerf + 1, kerf + narrowest]) first.add(length + rest);
  }
  const columns = new Int32Array(box.length + 1);
  for (let x = 1; x <= box.length; x++) {
    columns[x] = columns[x - 1] + (own?.[x] === 1 || (own === undefined && first.has(x)) ? 1 : 0);
  }
  return columns;
}
