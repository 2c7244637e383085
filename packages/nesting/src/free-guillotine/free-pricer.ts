import { type Block, cutFromBox } from '../pattern/block.js';
import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import { measuredPattern } from '../pattern/measured-pattern.js';
import type { Pattern } from '../pattern/part.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { BoxSolver } from './box-solver.js';
import { RasterBox } from './raster-box.js';

/**
 * The most valuable patterns of guillotine cuts nested without end. Whatever the
 * first cut must be, a box may count as one strip of its whole breadth, so it
 * restricts nothing here.
 *
 * Not yet: remnants are worth nothing, and with a narrowest strip the worth is
 * that without one, and a pattern that breaks it is not given.
 */
export class FreePricer implements PatternPricer {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #solvers: readonly BoxSolver[];

  constructor(boxes: readonly Box[], limits: Limits) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#solvers = boxes.map((box) => new RasterBox(box, limits));
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const worth = this.#solvers.map((solver) => solver.solve(values, coin));
    return { worth, pattern: (box) => this.#pattern(box) };
  }

  #pattern(stockClass: number): Pattern | undefined {
    const box = this.#boxes[stockClass];
    const block: Block | undefined = this.#solvers[stockClass].block();
    if (block === undefined) return undefined;
    const part = cutFromBox(block, box, this.#limits);
    const { pattern, legal } = measuredPattern(part, stockClass, box, this.#limits);
    return legal ? pattern : undefined;
  }
}
