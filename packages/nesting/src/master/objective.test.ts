import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import type { Sheet } from '../problem.js';
import { classCost, leastMetal, leastMoney, metal, money, totalCost } from './objective.js';
import { aboveEveryPlan, shortagePenalties } from './shortage.js';
import { stockClasses } from './stock-class.js';

const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };

function classOf(more: Partial<Sheet>, whole = 0) {
  const stock = [sheet('s', 10, 5, more)];
  const problem = { pieces: [piece('a', 5, 5, 1)], stock, shear: { firstCut: 'either' } as const };
  return stockClasses(problem, limits, () => whole);
}

describe('classCost', () => {
  it('takes the shop first, then buys, and has no price for more than there is', () => {
    const [entry] = classOf({ onHand: 2, bookValue: 30, price: 100, canBuy: 3 });
    const costs = [0, 1, 2, 3, 5, 6].map((count) => classCost(entry, count, money));
    expect(costs).toEqual([0, 30, 60, 160, 360, Number.POSITIVE_INFINITY]);
    expect(classCost(entry, 3, metal)).toBe(3000);
  });

  it('pays for whole packs and takes off what their other sheets are worth', () => {
    const [entry] = classOf({ onHand: 1, packSize: 4, price: 100, bookValue: 20 }, 20);
    const costs = [1, 2, 5, 6].map((count) => classCost(entry, count, money));
    expect(costs).toEqual([20, 20 + 400 - 60, 20 + 400, 20 + 800 - 60]);
    // Metal that goes back whole is not used.
    expect(classCost(entry, 2, metal)).toBe(2000);
  });

  it('never falls as more is taken, nor does the sum over classes', () => {
    fc.assert(
      fc.property(
        fc.nat(3),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 0, max: 40 }),
        fc.nat(60),
        fc.nat(12),
        (onHand, packSize, whole, dearer, count) => {
          const price = whole + dearer;
          const classes = classOf({ onHand, packSize, price, bookValue: whole }, whole);
          const cost = (n: number) => totalCost(classes, [n], money);
          expect(cost(count + 1)).toBeGreaterThanOrEqual(cost(count));
        },
      ),
    );
  });
});

describe('objectives', () => {
  it('are the least money, or the least metal within so much money', () => {
    expect(leastMoney).toEqual({ cost: money, caps: [] });
    expect(leastMetal(70)).toEqual({ cost: metal, caps: [{ measure: money, atMost: 70 }] });
    expect([money.coin, metal.coin]).toEqual([1, 0]);
  });
});

describe('going without a piece', () => {
  it('costs more than sheets of it where those are without limit, and than all stock where not', () => {
    const endless = classOf({ price: 70 });
    expect(shortagePenalties(endless, [5], leastMoney)[0]).toBeGreaterThan(70);
    const limited = classOf({ price: 70, canBuy: 9 });
    const all = totalCost(limited, [9], money);
    expect(shortagePenalties(limited, [9], leastMoney)[0]).toBeGreaterThan(all);
    // A piece that lies on no such stock is as if it were limited.
    const [first, other] = shortagePenalties(endless, [5, 5], leastMoney);
    expect(other).toBeGreaterThan(first);
  });

  it('every plan that wastes no sheet costs less than aboveEveryPlan', () => {
    const classes = classOf({ price: 70, packSize: 10, onHand: 1, bookValue: 90 });
    for (const pieces of [1, 4, 25]) {
      const worst = totalCost(classes, [pieces], money);
      expect(aboveEveryPlan(classes, [pieces], leastMoney)).toBeGreaterThan(worst);
    }
  });
});
