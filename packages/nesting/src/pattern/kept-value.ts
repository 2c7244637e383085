import type { KeepRule } from '../problem.js';

const MILLION = 1_000_000;

/** Whether a remnant of so many net ticks goes to the rack. */
export function isKept(length: number, width: number, rule: KeepRule | undefined): boolean {
  return (
    rule !== undefined &&
    Math.max(length, width) >= rule.leastLength &&
    Math.min(length, width) >= rule.leastWidth
  );
}

/**
 * Coins that a remnant of so many net ticks is worth in the rack: its area at the
 * rate of the rule, rounded down, less the trouble; 0 for scrap. Two remnants are
 * never worth more than the one they could have been.
 */
export function keptValue(length: number, width: number, rule: KeepRule | undefined): number {
  if (rule === undefined || !isKept(length, width, rule)) return 0;
  // Whole units and the rest apart, so that products stay whole numbers that a double can hold.
  const unit = MILLION * (rule.millions ?? 1);
  const area = length * width;
  const rest = area % unit;
  const coins =
    ((area - rest) / unit) * rule.coinsPerMillion +
    Math.floor((rest * rule.coinsPerMillion) / unit);
  return Math.max(0, coins - (rule.trouble ?? 0));
}

/** The same, not rounded down: no remnant is worth more, and between two sizes that are kept it grows in a line. */
export function keptUnrounded(length: number, width: number, rule: KeepRule): number {
  if (!isKept(length, width, rule)) return 0;
  return Math.max(0, length * width * coinsPerTick(rule) - (rule.trouble ?? 0));
}

/** Coins that a square tick is worth, before rounding and trouble. */
export function coinsPerTick({ coinsPerMillion, millions = 1 }: KeepRule): number {
  return coinsPerMillion / (MILLION * millions);
}
