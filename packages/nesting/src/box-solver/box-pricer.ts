import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Pattern } from '../pattern/part.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { KeepRule } from '../problem.js';
import type { BoxSolver } from './box-solver.js';
import { measuredPattern } from './measured-pattern.js';

/** Prices boxes one by one, each with a solver of its own. */
export class BoxPricer implements PatternPricer {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #rules: readonly (KeepRule | undefined)[];
  readonly #solvers: readonly BoxSolver[];

  /**
   * @param rules for each box, the rule for keeping its remnants, if there is one
   * @param solverFor makes the solver of a box
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[],
    solverFor: (box: Box, rule: KeepRule | undefined) => BoxSolver,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rules = rules;
    this.#solvers = boxes.map((box, index) => solverFor(box, rules[index]));
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const worth = this.#solvers.map((solver) => solver.solve(values, coin));
    return {
      worth,
      patterns: (box) => {
        const pattern = this.#pattern(box);
        return pattern === undefined ? [] : [{ pattern, worth: worth[box] }];
      },
    };
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
