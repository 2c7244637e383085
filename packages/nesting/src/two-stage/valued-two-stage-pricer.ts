import type { Box } from '../pattern/box.js';
import type { KeepValue } from '../pattern/keep-value.js';
import type { Limits } from '../pattern/limits.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import type { StripLister } from '../pattern/strip-lister.js';
import type { KeepRule } from '../problem.js';
import { CreditedPricer } from './credited-pricer.js';
import { everyWidthSteps } from './may-list-strips.js';
import { TwoStagePricer } from './two-stage-pricer.js';

/** Steps of knapsacks up to which strips of every width are tried, no more of any than demand has use for. */
const MOST_STEPS = 20_000_000;
/** The same where a quicker way, which looks less closely at demand, is there for orders of few sheets. */
const FEW_STEPS = 2_000_000;

/**
 * Prices all two-stage patterns where remnants have a value: exactly by strips of
 * every width where those are few enough, else by a worth that no pattern exceeds.
 * @param strips makes the lister of strips of every width, if there is one
 * @param quick finds patterns for so many of each
 */
export function valuedTwoStagePricer(
  boxes: readonly Box[],
  demand: readonly number[],
  limits: Limits,
  keep: KeepValue,
  rule: KeepRule,
  strips: () => StripLister | undefined,
  quick: PatternPricer,
): PatternPricer {
  const steps = everyWidthSteps(boxes);
  const exact = () => new TwoStagePricer(boxes, demand, limits, keep, 'every');
  if (steps <= FEW_STEPS) return exact();
  const lister = strips();
  if (lister !== undefined) return lister;
  return steps <= MOST_STEPS ? exact() : new CreditedPricer(boxes, demand, limits, rule, quick);
}
