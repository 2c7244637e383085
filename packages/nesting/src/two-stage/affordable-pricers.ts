import type { Box } from '../pattern/box.js';
import type { KeepValue } from '../pattern/keep-value.js';
import type { Limits } from '../pattern/limits.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import { EVERY_TICK, type Measure } from './measure.js';
import { pricingSteps } from './pricing-steps.js';
import { RelaxedPricer } from './relaxed-pricer.js';
import type { TriedWidths } from './strip-family.js';
import { TwoStagePricer } from './two-stage-pricer.js';

/** Steps of knapsacks for one pricing: some tenths of a second, and as many bytes. */
const MOST_STEPS = 150_000_000;

/** How finely strips are looked at. */
interface Fineness {
  readonly tried: TriedWidths;
  readonly measure: Measure;
}

/**
 * A pricer of two-stage patterns, as fine as time and memory allow. Its worth need not hold for
 * all patterns.
 * @param demand copies of each piece that are of use
 * @param keep absent where remnants have no value
 * @param tried strips that are wished for; fewer are tried where they are too many
 */
export function affordablePricer(
  boxes: readonly Box[],
  demand: readonly number[],
  limits: Limits,
  keep: KeepValue | undefined,
  tried: TriedWidths,
): TwoStagePricer {
  const fine = finest(boxes, demand, limits, tried);
  return new TwoStagePricer(boxes, demand, limits, keep, fine.tried, fine.measure);
}

/** The same where remnants have no value; no pattern exceeds its worth. */
export function boundingPricer(
  boxes: readonly Box[],
  demand: readonly number[],
  limits: Limits,
): PatternPricer {
  const { tried, measure } = finest(boxes, demand, limits, 'needed');
  const pricer = new TwoStagePricer(boxes, demand, limits, undefined, tried, measure);
  if (tried === 'needed' && measure.step === 1) return pricer;
  return new RelaxedPricer(boxes, demand, limits, pricer, measure.step);
}

function finest(
  boxes: readonly Box[],
  demand: readonly number[],
  limits: Limits,
  tried: TriedWidths,
): Fineness {
  const affordable = ({ tried, measure }: Fineness) =>
    pricingSteps(boxes, demand, limits, tried, measure) <= MOST_STEPS;
  const wished = { tried, measure: EVERY_TICK };
  if (affordable(wished)) return wished;
  for (let step = 1; ; step *= 2) {
    const fine = { tried: 'few', measure: { step, pieces: 'up' } } as const;
    if (affordable(fine)) return fine;
  }
}
