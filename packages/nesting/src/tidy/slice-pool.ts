import type { Slice } from '../pattern/part.js';
import { partKey } from '../pattern/pattern-key.js';

/** Rectangles that are divided alike, and how many there are. */
export interface Divided {
  readonly slices: readonly Slice[];
  readonly count: number;
}

/** Equal slices that wait for a place. */
export interface Lot {
  readonly slice: Slice;
  left: number;
}

/** All slices of some rectangles, equal ones together. */
export function slicePool(divided: readonly Divided[]): Lot[] {
  const lots = new Map<string, Lot>();
  for (const { slices, count } of divided) {
    for (const slice of slices) {
      const key = `${slice.extent}=${partKey(slice.part)}`;
      const lot = lots.get(key);
      if (lot) lot.left += count;
      else lots.set(key, { slice, left: count });
    }
  }
  return [...lots.values()];
}
