import type { StockClass } from '../master/stock-class.js';

/** How many sheets of the class there are. */
export function available(entry: StockClass): number {
  return entry.supplies.reduce((sum, supply) => sum + supply.count, 0);
}

/** The class after `count` of its sheets have been taken, in the order of its supplies. */
export function without(entry: StockClass, count: number): StockClass {
  let left = count;
  const supplies = entry.supplies.map((supply) => {
    const taken = Math.min(left, supply.count);
    left -= taken;
    return { ...supply, count: supply.count - taken, least: Math.max(0, supply.least - taken) };
  });
  return { ...entry, supplies };
}
