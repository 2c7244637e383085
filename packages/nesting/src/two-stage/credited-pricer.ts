import type { Box } from '../pattern/box.js';
import { coinsPerTick } from '../pattern/kept-value.js';
import type { Limits } from '../pattern/limits.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { KeepRule } from '../problem.js';
import { boundingPricer } from './affordable-pricers.js';
import { WorthBound } from './worth-bound.js';

/** Outweighs the rounding of sums. */
const ROUNDING = 1e-9;
/** Steps of filling strips after which a closer worth is given up: about a second. */
const MOST_STEPS = 300_000_000;

/**
 * Remnants are worth no more than the rate of the rule for all the metal that is
 * not in pieces, less the trouble of one. So a piece worth v is worth v less the
 * value of its own metal, on top of the value of the whole box; or else nothing is
 * kept. The larger of the two is a worth that no pattern exceeds, quick to have; a closer one
 * minds what remnants there can be. The patterns are those with strips as wide as their widest pieces.
 */
export class CreditedPricer implements Required<Pick<PatternPricer, 'price' | 'atMost'>> {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #rule: KeepRule;
  readonly #plain: PatternPricer;
  readonly #valued: PatternPricer;
  /** Net area of each piece, by the lays there are. */
  readonly #areas: ReadonlyMap<number, number>;
  readonly #closer: WorthBound;

  /** @param valued finds patterns, their remnants minded; its worth need not hold for all */
  constructor(
    boxes: readonly Box[],
    demand: readonly number[],
    limits: Limits,
    rule: KeepRule,
    valued: PatternPricer,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rule = rule;
    this.#plain = boundingPricer(boxes, demand, limits);
    this.#valued = valued;
    this.#closer = new WorthBound(boxes, demand, limits, rule);
    const { kerf } = limits;
    this.#areas = new Map(
      boxes.flatMap(({ lays }) =>
        lays.map(({ piece, length, width }) => [piece, (length - kerf) * (width - kerf)]),
      ),
    );
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const own = Float64Array.from(values);
    let found: PricedPatterns | undefined;
    const priced = () => {
      found ??= this.#valued.price(own, coin);
      return found;
    };
    return {
      worth: this.#credited(values, coin),
      patterns: (box) => priced().patterns(box),
      bands: () => priced().bands?.() ?? [],
    };
  }

  atMost(values: ArrayLike<number>, coin: number): readonly number[] | undefined {
    const closer = this.#closer.worth(values, coin, MOST_STEPS);
    if (closer === undefined) return undefined;
    return this.#credited(values, coin).map((worth, box) => Math.min(worth, closer[box]));
  }

  #credited(values: ArrayLike<number>, coin: number): readonly number[] {
    const { kerf } = this.#limits;
    const perTick = coin * coinsPerTick(this.#rule);
    const trouble = coin * (this.#rule.trouble ?? 0);
    const less = Float64Array.from(values, (value, piece) =>
      Math.max(0, value - (this.#areas.get(piece) ?? 0) * perTick),
    );
    const credited = this.#plain.price(less, 0).worth;
    const uncredited = this.#plain.price(values, 0).worth;
    return this.#boxes.map(({ length, width }, box) => {
      const whole = (length - kerf) * (width - kerf) * perTick - trouble;
      if (whole <= 0) return uncredited[box];
      return Math.max(uncredited[box], Math.ceil((credited[box] + whole) * (1 + ROUNDING)));
    });
  }
}
