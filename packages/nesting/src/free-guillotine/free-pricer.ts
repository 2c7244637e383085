import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import { measuredPattern } from '../pattern/measured-pattern.js';
import type { Pattern } from '../pattern/part.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { KeepRule } from '../problem.js';
import type { BoxSolver } from './box-solver.js';
import { DEFAULT_EFFORT, solverFor } from './solver-choice.js';

/**
 * The most valuable patterns of guillotine cuts nested without end, each piece any
 * number of times. Whatever the first cut must be, a box may count as one strip of
 * its whole breadth, so it restricts nothing here.
 *
 * The worth is exact, and the pattern attains it:
 * - where any strip may be parted off and remnants are worth nothing, over reduced
 *   raster points (`RasterBox`);
 * - otherwise over every whole size, up to the effort (`WholeBox`).
 *
 * Above the effort the worth is one that no pattern exceeds, and the pattern may be
 * worth less, or missing: raster points as if no strip were too narrow, remnants
 * by their area (`CreditBox`), sizes in steps of several ticks (`CoarseBox`). Where
 * remnants alone are worth most, there is a worth and no pattern.
 */
export class FreePricer implements PatternPricer {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #rules: readonly (KeepRule | undefined)[];
  readonly #solvers: readonly BoxSolver[];

  /**
   * @param boxes what there is to cut
   * @param limits of the machine
   * @param rules for each box, the rule for keeping its remnants, if there is one
   * @param effort above which the worth is not exact
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[] = [],
    effort = DEFAULT_EFFORT,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rules = rules;
    this.#solvers = boxes.map((box, index) => solverFor(box, limits, rules[index], effort));
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const worth = this.#solvers.map((solver) => solver.solve(values, coin));
    return { worth, pattern: (box) => this.#pattern(box) };
  }

  #pattern(stockClass: number): Pattern | undefined {
    const part = this.#solvers[stockClass].part();
    if (part === undefined) return undefined;
    const box = this.#boxes[stockClass];
    const rule = this.#rules[stockClass];
    const { pattern, legal } = measuredPattern(part, stockClass, box, this.#limits, rule);
    return legal && pattern.counts.length > 0 ? pattern : undefined;
  }
}
