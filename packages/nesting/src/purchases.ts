import { keepRuleFor } from './pattern/cutting-rules.js';
import { keptValue } from './pattern/kept-value.js';
import type { CostParts, Layout, Purchase } from './plan.js';
import type { CuttingProblem, Stock } from './problem.js';

/** What a set of layouts takes from the shop and from the dealer. */
export interface Purchases {
  readonly buy: readonly Purchase[];
  readonly parts: CostParts;
  /** Coins: `parts.bought + parts.fromShop - parts.kept`. */
  readonly cost: number;
}

/**
 * Reckons up layouts. Of every size, what is on hand is used first; the rest is
 * bought in whole packs, and what is left over of a pack goes to the rack at the
 * value of a whole sheet.
 */
export function purchases(
  layouts: readonly Pick<Layout, 'stock' | 'count' | 'remnants'>[],
  problem: CuttingProblem,
): Purchases {
  const used = new Map<string, number>();
  let kept = 0;
  for (const { stock, count, remnants } of layouts) {
    used.set(stock, (used.get(stock) ?? 0) + count);
    kept += count * remnants.reduce((sum, remnant) => sum + remnant.value, 0);
  }
  const buy: Purchase[] = [];
  let bought = 0;
  let fromShop = 0;
  for (const stock of problem.stock) {
    const sheets = used.get(stock.id) ?? 0;
    if (stock.kind === 'offcut') {
      fromShop += sheets * bookValue(stock, problem);
      continue;
    }
    const fromHand = Math.min(sheets, stock.onHand);
    fromShop += fromHand * bookValue(stock, problem);
    const count = wholePacks(sheets - fromHand, stock.packSize);
    if (count === 0) continue;
    buy.push({ stock: stock.id, count, cost: count * stock.price });
    bought += count * stock.price;
    kept += (count - (sheets - fromHand)) * wholeValue(stock, problem);
  }
  return { buy, parts: { bought, fromShop, kept }, cost: bought + fromShop - kept };
}

/** Coins at which stock in the shop stands in the books. */
export function bookValue(stock: Stock, problem: CuttingProblem): number {
  return stock.bookValue ?? wholeValue(stock, problem);
}

/** Coins that a stock is worth in the rack before anything is cut from it. */
export function wholeValue(stock: Stock, problem: CuttingProblem): number {
  return keptValue(stock.length, stock.width, keepRuleFor(stock, problem.keep));
}

function wholePacks(sheets: number, packSize = 1): number {
  return Math.ceil(sheets / packSize) * packSize;
}
