import type { KeepRule, Metal } from '../problem.js';

/** The rule for a metal of one thickness, if there is one. */
export function ruleFor(
  rules: readonly KeepRule[] | undefined,
  metal: Metal,
): KeepRule | undefined {
  return rules?.find((rule) => rule.metal === metal.metal && rule.thickness === metal.thickness);
}

/** Whether a rectangle of metal goes to the rack, and the coins it is worth there. */
export function inTheRack(
  rule: KeepRule | undefined,
  length: number,
  width: number,
): { readonly keep: boolean; readonly value: number } {
  const keep =
    rule !== undefined &&
    Math.max(length, width) >= rule.leastLength &&
    Math.min(length, width) >= rule.leastWidth;
  if (!keep) return { keep, value: 0 };
  const millionths = length * width * rule.coinsPerMillion;
  // Whole coins by taking the rest away first: no division that could round up.
  const ticks = 1_000_000 * (rule.millions ?? 1);
  const coins = (millionths - (millionths % ticks)) / ticks;
  return { keep, value: Math.max(0, coins - (rule.trouble ?? 0)) };
}
