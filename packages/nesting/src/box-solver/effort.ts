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
  /** False: raster points alone are looked at, even where every tick counts, so that the worth is a rough one. */
  readonly everyTick?: boolean;
}

/** A few hundred megabytes, a few seconds. */
export const DEFAULT_EFFORT: Effort = { mostCells: 8_000_000, mostCellsInAll: 12_000_000 };

/** Some hundredths of a second. */
export const ROUGH_EFFORT: Effort = {
  mostCells: 500_000,
  mostCellsInAll: 1_000_000,
  everyTick: false,
};

/** Whether every rectangle of whole ticks is looked at. */
export function wholeSizes(
  { length, width }: Box,
  { mostCells, everyTick = true }: Effort,
): boolean {
  return everyTick && (length + 1) * (width + 1) <= mostCells;
}
