import type { StockClass, Supply } from './stock-class.js';

/** A measure of what is taken from the stock, and what goes back to it. */
export interface Measure {
  readonly of: (supply: Supply) => number;
  /** What a coin of kept remnants takes off it. */
  readonly coin: 0 | 1;
}

/** Coins: what is paid, and the book value of what is used, less what goes to the rack. */
export const money: Measure = { of: (supply) => supply.price, coin: 1 };

/** How much metal is used up, for shops whose remnants have no value. */
export const metal: Measure = { of: (supply) => supply.charge, coin: 0 };

/** What a search makes least. */
export interface Objective {
  /** Absent where only shortages count. */
  readonly cost: Measure | undefined;
  /** What a plan must keep to besides. */
  readonly caps: readonly Cap[];
}

export interface Cap {
  readonly measure: Measure;
  readonly atMost: number;
}

export const leastMoney: Objective = { cost: money, caps: [] };

/** Least metal among the plans that spend at most `coins`. */
export function leastMetal(coins: number): Objective {
  return { cost: metal, caps: [{ measure: money, atMost: coins }] };
}

/** Cost of taking so many sheets of each class in the order of their supplies; `Infinity` beyond what there is. */
export function totalCost(
  classes: readonly StockClass[],
  used: readonly number[],
  measure: Measure,
): number {
  return classes.reduce((sum, entry, g) => sum + classCost(entry, used[g], measure), 0);
}

/**
 * Cost of taking `count` of a class in the order of its supplies; `Infinity`
 * beyond what there is. Whole packs are paid for; what is left of them is not
 * counted in any measure but coins.
 */
export function classCost(entry: StockClass, count: number, measure: Measure): number {
  let left = count;
  let total = 0;
  for (const supply of entry.supplies) {
    const taken = Math.min(left, supply.count);
    left -= taken;
    if (taken === 0) continue;
    const paid = Math.ceil(taken / supply.unit) * supply.unit;
    total +=
      measure === money
        ? paid * supply.price - (paid - taken) * supply.leftOver
        : taken * measure.of(supply);
  }
  return left > 0 ? Number.POSITIVE_INFINITY : total;
}
