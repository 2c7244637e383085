import type { Box } from '../pattern/box.js';
import type { KeepRule } from '../problem.js';

/** How much work a box may make before its worth is no longer exact, only never too low. */
export interface Effort {
  /** Rectangles of one box that are kept in memory, at about 26 bytes each. */
  readonly mostCells: number;
  /** Rows of parts looked at where remnants have values. */
  readonly mostSteps: number;
}

/** A few hundred megabytes, a few seconds. */
export const DEFAULT_EFFORT: Effort = { mostCells: 8_000_000, mostSteps: 1_000_000_000 };

/** Whether every rectangle of whole ticks can be looked at. */
export function wholeSizes(
  { length, width }: Box,
  rule: KeepRule | undefined,
  { mostCells, mostSteps }: Effort,
): boolean {
  const cells = (length + 1) * (width + 1);
  // Where any remnant may be a part worth having, lists of parts are full.
  const steps = rule === undefined ? 0 : (cells * (length + width)) / 4;
  return cells <= mostCells && steps <= mostSteps;
}
