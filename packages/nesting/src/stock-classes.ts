import type { CuttingProblem } from './problem.js';

/** A source of equal pieces of stock at one price. */
export interface Supply {
  /** The id of the sheet or offcut in the problem. */
  readonly stock: string;
  /** How many there are; `Infinity` where any number can be bought. */
  readonly count: number;
  /** How many must be used; above 0 only where a search has branched on it. */
  readonly least: number;
  /** Coins for each; 0 for what is in the shop already. */
  readonly price: number;
  /**
   * What using one takes from the shop, in thousandths of the largest sheet.
   * An offcut counts half of its area, so that among plans of equal cost the
   * rack is emptied before whole sheets are opened.
   */
  readonly charge: number;
}

/** All stock of one size: patterns for it are interchangeable. */
export interface StockClass {
  readonly length: number;
  readonly width: number;
  /** Cheapest first, and among equals the one to use up first. */
  readonly supplies: readonly Supply[];
}

/** Sorts the stock into classes of equal size. Stock with nothing in supply is left out. */
export function stockClasses(problem: CuttingProblem): readonly StockClass[] {
  const largest = Math.max(...problem.stock.map((stock) => stock.length * stock.width));
  const classes = new Map<string, { length: number; width: number; supplies: Supply[] }>();
  for (const stock of problem.stock) {
    const key = `${stock.length} x ${stock.width}`;
    const entry = classes.get(key) ?? { length: stock.length, width: stock.width, supplies: [] };
    classes.set(key, entry);
    const share = (stock.length * stock.width * 1000) / largest;
    if (stock.kind === 'offcut') {
      const charge = Math.max(1, Math.round(share / 2));
      entry.supplies.push({ stock: stock.id, count: 1, least: 0, price: 0, charge });
      continue;
    }
    const charge = Math.max(1, Math.round(share));
    const bought = stock.canBuy === 'any' ? Number.POSITIVE_INFINITY : stock.canBuy;
    entry.supplies.push({ stock: stock.id, count: stock.onHand, least: 0, price: 0, charge });
    entry.supplies.push({ stock: stock.id, count: bought, least: 0, price: stock.price, charge });
  }
  return [...classes.values()]
    .map((entry) => ({
      ...entry,
      supplies: entry.supplies
        .filter((supply) => supply.count > 0)
        .sort((a, b) => a.price - b.price || a.charge - b.charge),
    }))
    .filter((entry) => entry.supplies.length > 0);
}
