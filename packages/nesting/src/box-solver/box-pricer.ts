import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Pattern } from '../pattern/part.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { KeepRule } from '../problem.js';
import type { BoxSolver } from './box-solver.js';
import { measuredPattern } from './measured-pattern.js';
import { worthByArea } from './worth-by-area.js';

/**
 * Prices boxes one by one, each with a solver of its own. Once time is over, what is left of them is worth
 * what no pattern exceeds by its area, and has no pattern.
 */
export class BoxPricer implements PatternPricer {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #rules: readonly (KeepRule | undefined)[];
  readonly #solverFor: (box: Box, rule: KeepRule | undefined) => BoxSolver;
  readonly #over: () => boolean;
  /** By box, as far as they were needed so far. */
  readonly #solvers: (BoxSolver | undefined)[] = [];

  /**
   * @param rules for each box, the rule for keeping its remnants, if there is one
   * @param solverFor makes the solver of a box
   * @param over asked before each box is looked at
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[],
    solverFor: (box: Box, rule: KeepRule | undefined) => BoxSolver,
    over: () => boolean,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rules = rules;
    this.#solverFor = solverFor;
    this.#over = over;
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const solved = new Set<number>();
    const worth = this.#boxes.map((box, index) => {
      if (this.#over()) return worthByArea(box, values, this.#rules[index], coin);
      solved.add(index);
      return this.#solver(index).solve(values, coin);
    });
    return {
      worth,
      patterns: (box) => {
        const pattern = solved.has(box) ? this.#pattern(box) : undefined;
        return pattern === undefined ? [] : [{ pattern, worth: worth[box] }];
      },
    };
  }

  #solver(index: number): BoxSolver {
    const solver = this.#solvers[index] ?? this.#solverFor(this.#boxes[index], this.#rules[index]);
    this.#solvers[index] = solver;
    return solver;
  }

  #pattern(stockClass: number): Pattern | undefined {
    const part = this.#solver(stockClass).part();
    if (part === undefined) return undefined;
    const box = this.#boxes[stockClass];
    const rule = this.#rules[stockClass];
    const { pattern, legal } = measuredPattern(part, stockClass, box, this.#limits, rule);
    return legal && pattern.counts.length > 0 ? pattern : undefined;
  }
}
