import { layOut } from './layout/lay-out.js';
import type { StockClass } from './master/stock-class.js';
import type { PatternCount } from './pattern/pattern-count.js';
import type { Layout } from './plan.js';
import type { CuttingProblem } from './problem.js';

/**
 * Gives each sheet of a plan a sheet or offcut of its class, in the order of the
 * class's supplies. Offcuts take the patterns that are cut least often, so that few
 * patterns are parted between two stocks.
 */
export function assignStock(
  sheets: readonly PatternCount[],
  problem: CuttingProblem,
  classes: readonly StockClass[],
): readonly Layout[] {
  const stock = new Map(problem.stock.map((item) => [item.id, item]));
  return classes.flatMap((entry, g) => {
    const waiting = sheets
      .filter(({ pattern }) => pattern.stockClass === g)
      .map(({ pattern, count }) => ({ pattern, left: count }));
    const taken = new Map<string, Map<(typeof waiting)[number], number>>();
    for (const supply of entry.supplies) {
      let available = supply.count;
      const order = [...waiting].sort((a, b) =>
        supply.count === 1 ? a.left - b.left : b.left - a.left,
      );
      for (const item of order) {
        const count = Math.min(item.left, available);
        if (count === 0) continue;
        item.left -= count;
        available -= count;
        const counts = taken.get(supply.stock) ?? new Map<(typeof waiting)[number], number>();
        taken.set(supply.stock, counts);
        counts.set(item, (counts.get(item) ?? 0) + count);
      }
    }
    return [...taken].flatMap(([id, counts]) =>
      [...counts].flatMap(([{ pattern }, count]) => {
        const item = stock.get(id);
        return item === undefined ? [] : [layOut(pattern, item, count, problem)];
      }),
    );
  });
}
