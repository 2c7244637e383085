import type { Box } from '../pattern/box.js';
import { coinsPerTick } from '../pattern/kept-value.js';
import type { Limits } from '../pattern/limits.js';
import type { Part } from '../pattern/part.js';
import type { KeepRule } from '../problem.js';
import type { BoxSolver } from './box-solver.js';
import { measuredPattern } from './measured-pattern.js';
import { ROUNDING } from './rounding.js';

/**
 * A box whose remnants are worth keeping, but which has too many rectangles to
 * value each as the cuts leave it.
 *
 * Remnants are worth no more than the rate of the rule for all the metal that is
 * not in pieces, less the trouble of one. So a piece worth v is worth v less the
 * value of its own metal, on top of the value of the whole box; or else nothing
 * is kept. The larger of the two is a worth that no pattern exceeds. Of the
 * patterns of both, the better is given, with its remnants as its cuts leave them.
 */
export class CreditBox implements BoxSolver {
  readonly #box: Box;
  readonly #limits: Limits;
  readonly #rule: KeepRule;
  readonly #plain: BoxSolver;
  #values: ArrayLike<number> = [];
  #coin = 0;
  #credited: Part | undefined;

  /** @param plain solves the same box with remnants worth nothing */
  constructor(box: Box, limits: Limits, rule: KeepRule, plain: BoxSolver) {
    this.#box = box;
    this.#limits = limits;
    this.#rule = rule;
    this.#plain = plain;
  }

  solve(values: ArrayLike<number>, coin: number): number {
    const { kerf } = this.#limits;
    const { trouble = 0 } = this.#rule;
    this.#values = Float64Array.from(values);
    this.#coin = coin;
    this.#credited = undefined;
    const perTick = coin * coinsPerTick(this.#rule);
    const whole = (this.#box.length - kerf) * (this.#box.width - kerf) * perTick - coin * trouble;
    if (whole <= 0) return this.#plain.solve(values, 0);
    const less = Float64Array.from(values);
    for (const { piece, length, width } of this.#box.lays) {
      less[piece] = Math.max(0, values[piece] - (length - kerf) * (width - kerf) * perTick);
    }
    const credited = (this.#plain.solve(less, 0) + whole) * (1 + ROUNDING);
    this.#credited = this.#plain.part();
    return Math.max(credited, this.#plain.solve(values, 0));
  }

  part(): Part | undefined {
    const uncredited = this.#plain.part();
    return this.#worth(this.#credited) > this.#worth(uncredited) ? this.#credited : uncredited;
  }

  #worth(part: Part | undefined): number {
    if (part === undefined) return 0;
    const { pattern, legal } = measuredPattern(part, 0, this.#box, this.#limits, this.#rule);
    if (!legal) return 0;
    return pattern.counts.reduce(
      (sum, [piece, copies]) => sum + this.#values[piece] * copies,
      this.#coin * pattern.kept,
    );
  }
}
