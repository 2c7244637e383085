import { BestOf } from '../box-solver/best-of.js';
import { BoxPricer } from '../box-solver/box-pricer.js';
import type { BoxSolver } from '../box-solver/box-solver.js';
import { CoarseBox, coarseStep } from '../box-solver/coarse-box.js';
import { CreditBox } from '../box-solver/credit-box.js';
import { DEFAULT_EFFORT, type Effort, wholeSizes } from '../box-solver/effort.js';
import { boxRaster } from '../box-solver/raster-points.js';
import { shareEffort } from '../box-solver/share-effort.js';
import { TurnedBox } from '../box-solver/turned-box.js';
import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';
import { RasterBands } from './raster-bands.js';
import { type TriedSizes, WholeBands } from './whole-bands.js';

/**
 * The most valuable patterns of three stages and a last trim: bands, sections,
 * stacks, each piece any number of times.
 *
 * The worth is exact, and the pattern attains it:
 * - where any strip may be parted off and remnants are worth nothing, over reduced
 *   raster points (`RasterBands`);
 * - otherwise over every whole size, as far as memory allows (`WholeBands`).
 *
 * Above that the worth is one that no pattern exceeds, and the pattern may be
 * worth less, or missing: raster points as if no strip were too narrow, remnants
 * by their area (`CreditBox`), sizes in steps of several ticks (`CoarseBox`). Where
 * nothing is worth more than the whole box as a remnant, that is its worth, and
 * there is no pattern.
 */
export class ThreeStagePricer extends BoxPricer {
  /**
   * @param boxes what there is to cut
   * @param limits of the machine
   * @param rules for each box, the rule for keeping its remnants, if there is one
   * @param effort above which the worth is not exact
   * @param over true leaves what is not priced yet, see `BoxPricer`
   * @param sizes of bands and sections that are tried where every tick matters; with few the worth need not hold for all
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[] = [],
    effort = DEFAULT_EFFORT,
    over = () => false,
    sizes: TriedSizes = 'every',
  ) {
    const each = shareEffort(boxes, limits, rules, effort);
    super(
      boxes,
      limits,
      rules,
      (box, rule) => threeStageSolver(box, limits, rule, each, sizes),
      over,
    );
  }
}

/** Solves a box whose bands run as its first cuts may. */
export function threeStageSolver(
  box: Box,
  limits: Limits,
  rule: KeepRule | undefined,
  effort: Effort,
  sizes: TriedSizes = 'every',
): BoxSolver {
  const kinds = box.firstCuts.map((firstCut) =>
    firstCut === 'along'
      ? bandsSolver(box, limits, rule, effort, sizes)
      : new TurnedBox(box, (turned) => bandsSolver(turned, limits, rule, effort, sizes)),
  );
  return new BestOf(kinds);
}

/** Solves a box whose bands run along its length. */
function bandsSolver(
  box: Box,
  limits: Limits,
  rule: KeepRule | undefined,
  effort: Effort,
  sizes: TriedSizes,
): BoxSolver {
  if (rule === undefined) return plainSolver(box, limits, effort, sizes);
  if (wholeSizes(box, effort)) return new WholeBands(box, limits, rule, sizes);
  return new CreditBox(box, limits, rule, plainSolver(box, limits, effort, sizes));
}

function plainSolver(box: Box, limits: Limits, effort: Effort, sizes: TriedSizes): BoxSolver {
  if (limits.narrowest > 1 && wholeSizes(box, effort)) {
    return new WholeBands(box, limits, undefined, sizes);
  }
  const step = coarseStep(box, limits, effort, (box, limits) => {
    const { xs, ys } = boxRaster(box, limits);
    return xs.at.length * ys.at.length;
  });
  if (step === 1) return new RasterBands(box, limits);
  return new CoarseBox(box, limits, step, (box, limits) => new RasterBands(box, limits));
}
