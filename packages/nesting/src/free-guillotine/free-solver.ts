import type { BoxSolver } from '../box-solver/box-solver.js';
import { CoarseBox, coarseStep } from '../box-solver/coarse-box.js';
import { CreditBox } from '../box-solver/credit-box.js';
import { type Effort, wholeSizes } from '../box-solver/effort.js';
import { boxRaster } from '../box-solver/raster-points.js';
import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';
import { RasterBox } from './raster-box.js';
import { WholeBox } from './whole-box.js';

/**
 * The solver for a box: exact where memory and time allow, else one whose worth is
 * never too low.
 */
export function freeSolver(
  box: Box,
  limits: Limits,
  rule: KeepRule | undefined,
  effort: Effort,
): BoxSolver {
  if (rule === undefined) return plainSolver(box, limits, effort);
  if (wholeSizes(box, effort)) return new WholeBox(box, limits, rule);
  return new CreditBox(box, limits, rule, plainSolver(box, limits, effort));
}

function plainSolver(box: Box, limits: Limits, effort: Effort): BoxSolver {
  if (limits.narrowest > 1 && wholeSizes(box, effort)) return new WholeBox(box, limits);
  const step = coarseStep(box, limits, effort, (box, limits) => {
    const { xs, ys } = boxRaster(box, limits);
    return xs.at.length * ys.at.length;
  });
  if (step === 1) return new RasterBox(box, limits);
  return new CoarseBox(box, limits, step, (box, limits) => new RasterBox(box, limits));
}
