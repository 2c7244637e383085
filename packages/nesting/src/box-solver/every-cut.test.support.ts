import type { Box } from '../pattern/box.js';
import { keptValue } from '../pattern/kept-value.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';

/**
 * The most that free guillotine cuts get out of a box, by trying every cut of
 * every rectangle at every tick. In net ticks, so that kerfs are reckoned the
 * way a saw takes them. It shares nothing with the pricers.
 */
export function bestOfEveryCut(
  box: Box,
  limits: Limits,
  values: readonly number[],
  coin = 0,
  rule?: KeepRule,
): number {
  const { kerf, longestCut, narrowest } = limits;
  const known = new Map<number, number>();
  const lays = box.lays.map(({ piece, length, width }) => ({
    piece,
    length: length - kerf,
    width: width - kerf,
  }));

  /** Parts of an extent that one cut makes; a kerf may leave no second. */
  function partings(extent: number): [near: number, far: number][] {
    const found: [number, number][] = [];
    for (let near = narrowest; near < extent; near++) {
      const far = extent - near - kerf;
      if (far <= 0 || far >= narrowest) found.push([near, far]);
    }
    return found;
  }
  function best(length: number, width: number, asItIs: number): number {
    if (length <= 0 || width <= 0) return 0;
    let most = asItIs;
    for (const lay of lays) {
      if (lay.length === length && lay.width === width) most = Math.max(most, values[lay.piece]);
    }
    if (width <= longestCut) {
      for (const [near, far] of partings(length)) {
        most = Math.max(most, part(near, width) + part(far, width));
      }
    }
    if (length <= longestCut) {
      for (const [near, far] of partings(width)) {
        most = Math.max(most, part(length, near) + part(length, far));
      }
    }
    return most;
  }
  function part(length: number, width: number): number {
    const key = length * 10_000 + width;
    let worth = known.get(key);
    if (worth === undefined) {
      worth = best(length, width, coin * keptValue(length, width, rule));
      known.set(key, worth);
    }
    return worth;
  }
  return best(box.length - kerf, box.width - kerf, 0);
}
