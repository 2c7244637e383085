import type { KeepRule, Metal } from '@stripwright/nesting';
import { ticksUp } from '../length/ticks.js';
import { rackRate } from '../order/rack-rate.js';
import type { ShopKeepRule } from '../rack/rack.js';

/**
 * The rack's rule for keeping offcuts of a metal as the planner takes it: that for
 * its thickness, else that for the metal of any thickness. The least size rounds up
 * to marks.
 */
export function rackKeepRule(
  rules: readonly ShopKeepRule[],
  { metal, thickness }: Metal,
  mark: number,
): KeepRule | undefined {
  const own = rules.filter((rule) => rule.metal === metal);
  const rule =
    own.find((candidate) => candidate.thickness === thickness) ??
    own.find((candidate) => candidate.thickness === undefined);
  if (rule === undefined) return undefined;
  const sides = [rule.leastLength, rule.leastWidth].map((side) => ticksUp(side, mark));
  // A million square marks in square metres are mark * mark of them in square millimetres.
  return {
    leastLength: Math.max(...sides),
    leastWidth: Math.min(...sides),
    ...rackRate(rule.worth * mark * mark),
    ...(rule.trouble === 0 ? {} : { trouble: rule.trouble }),
  };
}
