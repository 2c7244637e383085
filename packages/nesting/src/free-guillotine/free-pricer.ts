import { BoxPricer } from '../box-solver/box-pricer.js';
import { DEFAULT_EFFORT } from '../box-solver/effort.js';
import { shareEffort } from '../box-solver/share-effort.js';
import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';
import { freeSolver } from './free-solver.js';

/**
 * The most valuable patterns of guillotine cuts nested without end, each piece any
 * number of times. Whatever the first cut must be, a box may count as one strip of
 * its whole breadth, so it restricts nothing here.
 *
 * The worth is exact, and the pattern attains it:
 * - where any strip may be parted off and remnants are worth nothing, over reduced
 *   raster points (`RasterBox`);
 * - otherwise over every whole size, as far as memory allows (`WholeBox`).
 *
 * Above that the worth is one that no pattern exceeds, and the pattern may be
 * worth less, or missing: raster points as if no strip were too narrow, remnants
 * by their area (`CreditBox`), sizes in steps of several ticks (`CoarseBox`). Where
 * nothing is worth more than the whole box as a remnant, that is its worth, and
 * there is no pattern.
 */
export class FreePricer extends BoxPricer {
  /**
   * @param boxes what there is to cut
   * @param limits of the machine
   * @param rules for each box, the rule for keeping its remnants, if there is one
   * @param effort above which the worth is not exact
   * @param over true leaves what is not priced yet, see `BoxPricer`
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[] = [],
    effort = DEFAULT_EFFORT,
    over = () => false,
  ) {
    const each = shareEffort(boxes, limits, rules, effort);
    super(boxes, limits, rules, (box, rule) => freeSolver(box, limits, rule, each), over);
  }
}
