import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';
import type { BoxSolver } from './box-solver.js';
import { CoarseBox, coarseBox, coarseLimits } from './coarse-box.js';
import { CreditBox } from './credit-box.js';
import { boxRaster, RasterBox } from './raster-box.js';
import { WholeBox } from './whole-box.js';

/** How much work a box may make before its worth is no longer exact, only never too low. */
export interface Effort {
  /** Rectangles of one box that are kept in memory, at about 24 bytes each. */
  readonly mostCells: number;
  /** Rows of parts looked at where remnants have values. */
  readonly mostSteps: number;
}

/** A few hundred megabytes, a few seconds. */
export const DEFAULT_EFFORT: Effort = { mostCells: 8_000_000, mostSteps: 1_000_000_000 };

/** Longer boxes are not looked through tick by tick. */
const LONGEST_SCAN = 4_000_000;

/**
 * The solver for a box: exact where memory and time allow, else one whose worth is
 * never too low.
 */
export function solverFor(
  box: Box,
  limits: Limits,
  rule: KeepRule | undefined,
  effort: Effort,
): BoxSolver {
  const { length, width } = box;
  const cells = (length + 1) * (width + 1);
  if (rule === undefined) return plainSolver(box, limits, effort);
  // Every remnant may be a part of its own, so lists of parts are full.
  const steps = (cells * (length + width)) / 4;
  if (cells <= effort.mostCells && steps <= effort.mostSteps) {
    return new WholeBox(box, limits, rule);
  }
  return new CreditBox(box, limits, rule, plainSolver(box, limits, effort));
}

function plainSolver(box: Box, limits: Limits, effort: Effort): BoxSolver {
  const cells = (box.length + 1) * (box.width + 1);
  if (limits.narrowest > 1 && cells <= effort.mostCells) return new WholeBox(box, limits);
  let step = 1;
  while (Math.max(box.length, box.width) / step > LONGEST_SCAN) step *= 2;
  if (step === 1) {
    const raster = boxRaster(box, limits);
    if (raster.xs.at.length * raster.ys.at.length <= effort.mostCells) {
      return new RasterBox(box, limits, raster);
    }
    step = 2;
  }
  for (; ; step *= 2) {
    // Pieces rounded up and down have points of their own.
    const fits = [Math.floor, Math.ceil].every((round) => {
      const { xs, ys } = boxRaster(coarseBox(box, step, round), coarseLimits(limits, step));
      return xs.at.length * ys.at.length <= effort.mostCells / 2;
    });
    if (fits) return new CoarseBox(box, limits, step);
  }
}
