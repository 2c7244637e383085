import { describe, expect, it } from 'vitest';
import {
  copiesOf,
  either,
  offcut,
  piece,
  planned,
  sheet,
  stockUsed,
} from './plan-cutting.test.support.js';
import type { CuttingProblem, KeepRule } from './problem.js';
import { verifyPlan } from './verify/verify-plan.js';

describe('the stock of a plan', () => {
  it('is offcuts, then sheets on hand, before anything is bought', async () => {
    const plan = await planned({
      pieces: [piece('a', 50, 10, 12)],
      stock: [sheet('s', 100, 20, { onHand: 1 }), offcut('A', 50, 30), offcut('B', 50, 30)],
      shear: either,
    });
    // 3 from each offcut, 4 from the sheet on hand, 2 from a bought one.
    expect(plan.buy).toEqual([{ stock: 's', count: 1, cost: 100 }]);
    expect(plan.bound.proven).toBe(true);
    expect(stockUsed(plan.layouts)).toEqual({ A: 1, B: 1, s: 2 });
  });

  it('is no whole sheet on hand where an offcut will do', async () => {
    const plan = await planned({
      pieces: [piece('a', 40, 10, 2)],
      stock: [sheet('s', 100, 20, { onHand: 5 }), offcut('A', 45, 25)],
      shear: either,
    });
    expect(stockUsed(plan.layouts)).toEqual({ A: 1 });
    expect(plan.cost).toBe(0);
  });

  it('is no more sheets on hand than needed, although they cost nothing', async () => {
    const plan = await planned({
      pieces: [piece('a', 30, 11, 20), piece('b', 23, 9, 18)],
      stock: [sheet('s', 100, 60, { onHand: 50 })],
      shear: either,
    });
    // 20 x 330 + 18 x 207 = 10326 square ticks: more than one sheet of 6000 holds.
    expect(stockUsed(plan.layouts)).toEqual({ s: 2 });
  });

  it('is the least metal among plans of the same cost, not what first fit takes', async () => {
    const onHand = { onHand: 1, canBuy: 0 };
    const plan = await planned({
      pieces: [piece('a', 5, 2, 1), piece('b', 4, 2, 1), piece('c', 3, 2, 1)].map((p) => ({
        ...p,
        mayTurn: false,
      })),
      stock: [sheet('X', 9, 2, onHand), sheet('Y', 8, 2, onHand), sheet('Z', 4, 2, onHand)],
      shear: { firstCut: 'along' },
    });
    // First fit fills X with 5 + 4, and has 3 left for Z; 5 + 3 fill Y and 4 fills Z.
    expect(plan.cost).toBe(0);
    expect(stockUsed(plan.layouts)).toEqual({ Y: 1, Z: 1 });
  });

  it('is of several sizes where that is cheaper', async () => {
    const plan = await planned({
      pieces: [piece('a', 100, 10, 12)],
      stock: [sheet('large', 100, 100, { price: 90 }), sheet('small', 100, 20, { price: 20 })],
      shear: either,
    });
    expect(plan.cost).toBe(110);
    expect(plan.buy).toEqual([
      { stock: 'large', count: 1, cost: 90 },
      { stock: 'small', count: 1, cost: 20 },
    ]);
  });

  it('is only of the metal and thickness of the pieces on it', async () => {
    const metals = [
      {},
      { metal: 'tinplate' },
      { metal: 'tinplate', thickness: 0.3 },
      { metal: 'tinplate', thickness: 0.4 },
      { thickness: 0.3 },
    ];
    const problem: CuttingProblem = {
      pieces: metals.map((metal, i) => piece(`piece ${i}`, 20, 10, 3 + i, metal)),
      stock: metals.map((metal, i) => sheet(`sheet ${i}`, 50, 20, { ...metal, price: 10 ** i })),
      shear: either,
    };
    const plan = await planned(problem);
    for (const { stock, pieces } of plan.layouts) {
      for (const { piece } of pieces) expect(piece.slice(-1)).toBe(stock.slice(-1));
    }
    // A sheet of 50 x 20 holds five of 20 x 10: two pairs and one that is turned.
    expect(plan.parts.bought).toBe(22_111);
    expect(plan.bound).toEqual({ cost: 22_111, proven: true });
  });

  it('is paid for at its price where it is bought, at its book value where it is not', async () => {
    const plan = await planned({
      pieces: [piece('a', 100, 20, 4)],
      stock: [
        sheet('s', 100, 20, { onHand: 1, bookValue: 30 }),
        offcut('A', 100, 25, { bookValue: 7 }),
        offcut('dear', 100, 25, { bookValue: 101 }),
      ],
      shear: either,
    });
    expect(stockUsed(plan.layouts)).toEqual({ A: 1, s: 3 });
    expect(plan.parts).toEqual({ bought: 200, fromShop: 37, kept: 0 });
    expect(plan.cost).toBe(237);
  });
});

describe('packs', () => {
  const problem = (quantity: number, more: object, keep: readonly KeepRule[] = []) => ({
    pieces: [piece('a', 100, 20, quantity)],
    stock: [sheet('s', 100, 20, { packSize: 10, canBuy: 20, ...more })],
    shear: either,
    keep,
  });

  it('are bought whole', async () => {
    expect((await planned(problem(1, {}))).buy).toEqual([{ stock: 's', count: 10, cost: 1000 }]);
    expect((await planned(problem(11, {}))).buy).toEqual([{ stock: 's', count: 20, cost: 2000 }]);
    expect((await planned(problem(13, { onHand: 3 }))).buy).toEqual([
      { stock: 's', count: 10, cost: 1000 },
    ]);
  });

  it('give back what is left of them, by the rule for keeping', async () => {
    const rule = { leastLength: 100, leastWidth: 20, coinsPerMillion: 30_000 };
    const plan = await planned(problem(4, {}, [rule]));
    // A whole sheet is worth 2000 x 0.03 = 60 coins.
    expect(plan.parts).toEqual({ bought: 1000, fromShop: 0, kept: 360 });
    expect(plan.cost).toBe(640);
    expect(plan.bound.cost).toBeLessThanOrEqual(640);
  });
});

describe('spares', () => {
  const spare = (spares: number) => piece('spare', 50, 5, 0, { spares });

  it('take up what is scrap, as many as are welcome and fit', async () => {
    const problem = (spares: number): CuttingProblem => ({
      pieces: [piece('a', 100, 10, 3), spare(spares)],
      stock: [sheet('s', 100, 20)],
      shear: either,
    });
    // Two sheets hold four pieces of 100 x 10; in the place of the fourth there is room for four spares.
    for (const [welcome, found] of [
      [1, 1],
      [3, 3],
      [9, 4],
    ]) {
      const plan = await planned(problem(welcome));
      expect(plan.cost).toBe(200);
      expect(plan.spares).toEqual([{ piece: 'spare', count: found }]);
      expect(copiesOf('spare', plan.layouts)).toBe(found);
      expect(copiesOf('a', plan.layouts)).toBe(3);
      expect(verifyPlan(problem(welcome), plan)).toEqual([]);
    }
  });

  it('never cost anything: no sheet, no offcut, nothing that goes to the rack', async () => {
    const full: CuttingProblem = {
      pieces: [piece('a', 100, 10, 2), spare(5)],
      stock: [sheet('s', 100, 20), offcut('A', 60, 20, { bookValue: 1 })],
      shear: either,
    };
    const plan = await planned(full);
    expect(plan.spares).toEqual([]);
    expect(stockUsed(plan.layouts)).toEqual({ s: 1 });

    const keep = [{ leastLength: 100, leastWidth: 10, coinsPerMillion: 40_000 }];
    const half = { ...full, pieces: [piece('a', 100, 10, 1), spare(5)], keep };
    // The other half of the sheet is worth 40 coins in the rack, which no spare may take.
    const rack = [{ ...full.stock[0] }];
    const kept = await planned({ ...half, stock: rack });
    expect(kept.parts).toEqual({ bought: 100, fromShop: 0, kept: 40 });
    expect(kept.spares).toEqual([]);
    const worthless = await planned({ ...half, stock: rack, keep: [] });
    expect(worthless.spares).toEqual([{ piece: 'spare', count: 4 }]);
  });
});
