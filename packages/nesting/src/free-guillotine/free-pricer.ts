import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import { measuredPattern } from '../pattern/measured-pattern.js';
import type { Pattern } from '../pattern/part.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { KeepRule } from '../problem.js';
import type { BoxSolver } from './box-solver.js';
import { RasterBox } from './raster-box.js';
import { WholeBox } from './whole-box.js';

/**
 * The most valuable patterns of guillotine cuts nested without end. Whatever the
 * first cut must be, a box may count as one strip of its whole breadth, so it
 * restricts nothing here.
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
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[] = [],
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rules = rules;
    this.#solvers = boxes.map((box, index) => solverFor(box, limits, rules[index]));
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const worth = this.#solvers.map((solver) => solver.solve(values, coin));
    return { worth, pattern: (box) => this.#pattern(box) };
  }

  #pattern(stockClass: number): Pattern | undefined {
    const part = this.#solvers[stockClass].part();
    if (part === undefined) return undefined;
    const box = this.#boxes[stockClass];
    return measuredPattern(part, stockClass, box, this.#limits, this.#rules[stockClass]).pattern;
  }
}

function solverFor(box: Box, limits: Limits, rule: KeepRule | undefined): BoxSolver {
  if (limits.narrowest === 1 && rule === undefined) return new RasterBox(box, limits);
  return new WholeBox(box, limits, rule);
}
