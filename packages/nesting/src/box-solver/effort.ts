import type { Box } from '../pattern/box.js';

/** How much work boxes may make before their worth is no longer exact, only never too low. */
export interface Effort {
  /**
   * Rectangles of one box that are kept in memory, at about 26 bytes each, or 50
   * where remnants have values.
   */
  readonly mostCells: number;
  /** The same for all boxes of a pricer together; no limit when absent. */
  readonly mostCellsInAll?: number;
}

/** A few hundred megabytes, a few seconds. */
export const DEFAULT_EFFORT: Effort = { mostCells: 8_000_000, mostCellsInAll: 12_000_000 };

/** Whether every rectangle of whole ticks can be looked at. */
export function wholeSizes({ length, width }: Box, { mostCells }: Effort): boolean {
  return (length + 1) * (width + 1) <= mostCells;
}
