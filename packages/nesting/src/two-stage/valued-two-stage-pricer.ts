import type { Box } from '../pattern/box.js';
import type { KeepValue } from '../pattern/keep-value.js';
import type { Limits } from '../pattern/limits.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import type { StripLister } from '../pattern/strip-lister.js';
import type { KeepRule } from '../problem.js';
import { everyWidthSteps } from './may-list-strips.js';
import { TwoStagePricer } from './two-stage-pricer.js';

/** Steps of knapsacks up to which strips of every width are tried, no more of any than demand has use for. */
const MOST_STEPS = 20_000_000;
/** The same where a quicker way, which looks less closely at demand, is there for orders of few sheets. */
const FEW_STEPS = 2_000_000;
const MILLION = 1_000_000;
/** Outweighs the rounding of sums. */
const ROUNDING = 1e-9;

/**
 * Prices all two-stage patterns where remnants have a value: exactly by strips of
 * every width where those are few enough, else by a worth that no pattern exceeds.
 * @param strips makes the lister of strips of every width, if there is one
 */
export function valuedTwoStagePricer(
  boxes: readonly Box[],
  demand: readonly number[],
  limits: Limits,
  keep: KeepValue,
  rule: KeepRule,
  strips: () => StripLister | undefined,
): PatternPricer {
  const steps = everyWidthSteps(boxes);
  const exact = () => new TwoStagePricer(boxes, demand, limits, keep, true);
  if (steps <= FEW_STEPS) return exact();
  const lister = strips();
  if (lister !== undefined) return lister;
  return steps <= MOST_STEPS ? exact() : new CreditedPricer(boxes, demand, limits, keep, rule);
}

/**
 * Remnants are worth no more than the rate of the rule for all the metal that is
 * not in pieces, less the trouble of one. So a piece worth v is worth v less the
 * value of its own metal, on top of the value of the whole box; or else nothing is
 * kept. The larger of the two is a worth that no pattern exceeds. The patterns are
 * those with strips as wide as their widest pieces.
 */
class CreditedPricer implements PatternPricer {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #rule: KeepRule;
  readonly #plain: TwoStagePricer;
  readonly #valued: TwoStagePricer;
  /** Net area of each piece, by the lays there are. */
  readonly #areas: ReadonlyMap<number, number>;

  constructor(
    boxes: readonly Box[],
    demand: readonly number[],
    limits: Limits,
    keep: KeepValue,
    rule: KeepRule,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rule = rule;
    this.#plain = new TwoStagePricer(boxes, demand, limits, undefined);
    this.#valued = new TwoStagePricer(boxes, demand, limits, keep);
    const { kerf } = limits;
    this.#areas = new Map(
      boxes.flatMap(({ lays }) =>
        lays.map(({ piece, length, width }) => [piece, (length - kerf) * (width - kerf)]),
      ),
    );
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const { kerf } = this.#limits;
    const perTick = (coin * this.#rule.coinsPerMillion) / MILLION;
    const trouble = coin * (this.#rule.trouble ?? 0);
    const less = Float64Array.from(values, (value, piece) =>
      Math.max(0, value - (this.#areas.get(piece) ?? 0) * perTick),
    );
    const credited = this.#plain.price(less, 0).worth;
    const uncredited = this.#plain.price(values, 0).worth;
    const worth = this.#boxes.map(({ length, width }, box) => {
      const whole = (length - kerf) * (width - kerf) * perTick - trouble;
      if (whole <= 0) return uncredited[box];
      return Math.max(uncredited[box], Math.ceil((credited[box] + whole) * (1 + ROUNDING)));
    });
    const priced = this.#valued.price(values, coin);
    return {
      worth,
      patterns: (box) => priced.patterns(box),
      bands: () => priced.bands?.() ?? [],
    };
  }
}
