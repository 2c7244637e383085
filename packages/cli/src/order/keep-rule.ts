import type { KeepRule } from '@stripwright/nesting';
import type { Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import type { Shop } from './order.js';
import { rackRate } from './rack-rate.js';

/** What metal is worth by: a square foot, 304.8 mm each way, or a square metre. In square millimetres. */
export const WORTH_AREA: Readonly<Record<Rule['units'], number>> = {
  in: 304.8 * 304.8,
  mm: 1000 * 1000,
};

/**
 * The shop's rule for keeping offcuts as the planner takes it; none where all is
 * scrap. The least size rounds up to marks.
 */
export function keepRule({
  rule,
  keepFrom,
  offcutWorth = 0,
  offcutTrouble,
}: Pick<Shop, 'rule' | 'keepFrom' | 'offcutWorth' | 'offcutTrouble'>): KeepRule | undefined {
  if (keepFrom === undefined) return undefined;
  const sides = [keepFrom.length, keepFrom.width].map((side) => ticksUp(side, rule.mark));
  const million = 1_000_000 * rule.mark * rule.mark;
  return {
    leastLength: Math.max(...sides),
    leastWidth: Math.min(...sides),
    ...rackRate((offcutWorth * million) / WORTH_AREA[rule.units]),
    ...(offcutTrouble === undefined ? {} : { trouble: offcutTrouble }),
  };
}

/** Coins that a rectangle of metal is worth on the rack, in marks each way. */
export function rackWorth(length: number, width: number, rule: KeepRule): number {
  if (Math.max(length, width) < rule.leastLength || Math.min(length, width) < rule.leastWidth) {
    return 0;
  }
  const ticks = 1_000_000 * (rule.millions ?? 1);
  const coins = Math.floor((length * width * rule.coinsPerMillion) / ticks);
  return Math.max(0, coins - (rule.trouble ?? 0));
}
