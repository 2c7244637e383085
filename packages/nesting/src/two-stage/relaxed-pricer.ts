import { worthByArea } from '../box-solver/worth-by-area.js';
import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import { TwoStagePricer } from './two-stage-pricer.js';

/**
 * Prices two-stage patterns where exact pricing would take too long: a worth that no pattern exceeds,
 * as if any sliver could be parted off, in steps of several ticks, each piece rounded down; and the
 * patterns of a pricer whose own worth holds only for those it looks at.
 */
export class RelaxedPricer implements Required<Pick<PatternPricer, 'price'>> {
  readonly #boxes: readonly Box[];
  readonly #finder: PatternPricer;
  /** Undefined where a piece is smaller than a step, so that only its area is known. */
  readonly #above: TwoStagePricer | undefined;

  /**
   * @param demand copies of each piece that are of use
   * @param finder of patterns
   * @param step ticks
   */
  constructor(
    boxes: readonly Box[],
    demand: readonly number[],
    limits: Limits,
    finder: PatternPricer,
    step: number,
  ) {
    this.#boxes = boxes;
    this.#finder = finder;
    const smallest = Math.min(
      ...boxes.map(({ lays }) =>
        lays.reduce((least, lay) => Math.min(least, lay.length, lay.width), step),
      ),
    );
    if (smallest < step) return;
    const relaxed = { ...limits, narrowest: 1 };
    const measure = { step, pieces: 'down' } as const;
    this.#above = new TwoStagePricer(boxes, demand, relaxed, undefined, 'few', measure);
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const found = this.#finder.price(values, coin);
    const above = this.#above?.price(values, 0).worth;
    return {
      ...found,
      worth: this.#boxes.map((box, index) =>
        Math.ceil(Math.min(worthByArea(box, values), above?.[index] ?? Number.POSITIVE_INFINITY)),
      ),
    };
  }
}
