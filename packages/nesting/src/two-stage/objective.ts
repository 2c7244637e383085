import type { StockClass, Supply } from '../stock-classes.js';

/**
 * What a stage of planning makes least. The first stage counts coins. The
 * second counts how much metal is used up, and holds the coins to what the
 * first stage reached.
 */
export interface Objective {
  readonly cost: (supply: Supply) => number;
  /** The most coins that may be spent, where coins are not the cost itself. */
  readonly budget?: number;
}

export const leastMoney: Objective = { cost: (supply) => supply.price };

/** Least metal among the plans that spend at most `budget` coins. */
export function leastMetal(budget: number): Objective {
  return { cost: (supply) => supply.charge, budget };
}

/** Whether taking so many sheets of each class, cheapest first, keeps to the objective's budget. */
export function withinBudget(
  objective: Objective,
  classes: readonly StockClass[],
  used: readonly number[],
): boolean {
  return (
    totalCost(classes, used, (supply) => supply.price) <=
    (objective.budget ?? Number.POSITIVE_INFINITY)
  );
}

/** Cost of taking so many sheets of each class, cheapest first; `Infinity` beyond what there is. */
export function totalCost(
  classes: readonly StockClass[],
  used: readonly number[],
  cost: Objective['cost'],
): number {
  return classes.reduce((sum, entry, g) => sum + classCost(entry, used[g], cost), 0);
}

/** Cost of taking `count` of a class, cheapest supplies first; `Infinity` beyond what there is. */
export function classCost(entry: StockClass, count: number, cost: Objective['cost']): number {
  let left = count;
  let total = 0;
  for (const supply of entry.supplies) {
    const taken = Math.min(left, supply.count);
    if (taken > 0) total += taken * cost(supply);
    left -= taken;
  }
  return left > 0 ? Number.POSITIVE_INFINITY : total;
}
