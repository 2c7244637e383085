import type { Box } from '../pattern/box.js';

/** How much work a box may make before its worth is no longer exact, only never too low. */
export interface Effort {
  /**
   * Rectangles of one box that are kept in memory, at about 26 bytes each, or 50
   * where remnants have values.
   */
  readonly mostCells: number;
}

/** A few hundred megabytes, a few seconds. */
export const DEFAULT_EFFORT: Effort = { mostCells: 8_000_000 };

/** Whether every rectangle of whole ticks can be looked at. */
export function wholeSizes({ length, width }: Box, { mostCells }: Effort): boolean {
  return (length + 1) * (width + 1) <= mostCells;
}
