import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem } from '../problem.js';
import { compose } from '../search/compose.js';
import { groundOf } from '../search/ground.test.support.js';
import { BandMaster } from './band-master.js';
import { metal, money, totalCost } from './objective.js';
import { pricedGround } from './priced-book.test.support.js';

const problem: CuttingProblem = {
  pieces: [piece('a', 37, 5, 9), piece('b', 29, 4, 14), piece('c', 18, 7, 11)],
  stock: [
    sheet('s', 90, 30, { price: 7, onHand: 1, bookValue: 3 }),
    sheet('t', 60, 25, { price: 4 }),
    offcut('A', 45, 25, { bookValue: 1 }),
  ],
  shear: { firstCut: 'either' },
};

/** A book with what first fit and pricing at several values give. */
function started(wanted: readonly number[] = [9, 14, 11]) {
  const pieces = problem.pieces.map((each, i) => ({ ...each, quantity: wanted[i] }));
  return pricedGround({ ...problem, pieces });
}

describe('BandMaster', () => {
  it('gives whole sheets and bands that cut the demand from the stock there is, for what it says', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat(12), { minLength: 3, maxLength: 3 }),
        fc.nat(40),
        async (demand, atMost) => {
          const ground = started(demand);
          const caps = [{ measure: metal, atMost: 1000 * atMost }];
          const objective = { cost: money, caps };
          const master = new BandMaster({ ...ground, objective, packs: true });
          master.addFromBook();
          const answer = await master.solve({ integer: true, seconds: 20 });
          master.close();
          if (typeof answer === 'string') throw new Error(answer);
          const composed = compose(ground.book, answer);
          const made = [0, 0, 0];
          const used = ground.classes.map(() => 0);
          for (const [{ counts, stockClass }, count] of composed) {
            used[stockClass] += count;
            for (const [i, copies] of counts) made[i] += copies * count;
          }
          demand.forEach((quantity, i) => {
            expect(made[i] + answer.short[i]).toBeGreaterThanOrEqual(quantity);
          });
          const paid = answer.supplies.map((counts, g) =>
            counts.reduce((sum, n, t) => {
              expect(n).toBeLessThanOrEqual(ground.classes[g].supplies[t].count);
              return sum + n;
            }, 0),
          );
          paid.forEach((count, g) => {
            expect(used[g]).toBeLessThanOrEqual(count);
          });
          expect(totalCost(ground.classes, paid, metal)).toBeLessThanOrEqual(1000 * atMost);
          const penalty = answer.short.reduce((sum, n, i) => sum + n * ground.penalties[i], 0);
          expect(answer.cost).toBeCloseTo(totalCost(ground.classes, paid, money) + penalty, 6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('takes supplies in whole packs where it is told to', async () => {
    const packed = { ...problem.stock[1], packSize: 10 } as const;
    const { ground, start } = groundOf({ ...problem, stock: [packed] });
    for (const { pattern } of start ?? []) ground.book.addPattern(pattern);
    for (const packs of [false, true]) {
      const master = new BandMaster({ ...ground, packs });
      master.addFromBook();
      const answer = await master.solve({ integer: true, seconds: 20 });
      master.close();
      if (typeof answer === 'string') throw new Error(answer);
      const [[count]] = answer.supplies;
      if (packs) expect(count % 10).toBe(0);
      else expect(count).toBeLessThan(10);
    }
  });

  it('follows changes of demand and supplies, and says when nothing can be done', async () => {
    const ground = started();
    const { penalties, ...strict } = ground;
    expect(penalties).toHaveLength(3);
    const master = new BandMaster(strict);
    master.addFromBook();
    const cost = async () => {
      const answer = await master.solve({ integer: false, seconds: 20 });
      return typeof answer === 'string' ? answer : answer.cost;
    };
    const all = Number(await cost());
    expect(all).toBeGreaterThan(0);
    master.setDemand([0, 0, 0]);
    expect(await cost()).toBeCloseTo(0, 9);
    master.setDemand([18, 28, 22]);
    expect(Number(await cost())).toBeGreaterThan(all);
    master.setDemand(ground.demand);
    expect(await cost()).toBeCloseTo(all, 6);
    const none = ground.classes.map((entry) => ({
      ...entry,
      supplies: entry.supplies.map((supply) => ({ ...supply, count: 0 })),
    }));
    master.setSupplies(none);
    expect(await cost()).toBe('infeasible');
    const forced = ground.classes.map((entry) => ({
      ...entry,
      supplies: entry.supplies.map((supply) =>
        Number.isFinite(supply.count) ? supply : { ...supply, least: 50 },
      ),
    }));
    master.setSupplies(forced);
    expect(await cost()).toBeCloseTo(50 * (7 + 4), 6);
    master.close();
    const other = new BandMaster({ ...strict, classes: forced });
    other.addFromBook();
    const answer = await other.solve({ integer: false, seconds: 20 });
    expect(answer).toMatchObject({ cost: 50 * (7 + 4) });
    other.close();
  });

  it.each([
    [5, 4],
    [4, 5],
  ])(
    'lets a slot serve as a narrower one, known before it or not: %d, then %d wide',
    async (...extents) => {
      const { ground } = groundOf({
        pieces: [
          piece('wide', 20, 5, 4, { mayTurn: false }),
          piece('thin', 20, 4, 2, { mayTurn: false }),
        ],
        stock: [sheet('s', 40, 10, { price: 1 })],
        shear: { firstCut: 'along' },
      });
      const lay = (piece: number) =>
        ({ extent: 20, part: { kind: 'lay', piece, turned: false } }) as const;
      const band = (piece: number, extent: number) =>
        ground.book.addBand({
          box: 0,
          cuts: 'along',
          extent,
          part: { kind: 'split', cuts: 'across', parts: [lay(piece), lay(piece)] },
        });
      for (const extent of extents) ground.book.slot(0, 'along', extent);
      const bands = [band(0, 5), band(1, 4)];
      const slot = ground.book.slot(0, 'along', 5);
      ground.book.addSheet({ box: 0, cuts: 'along', slots: [[slot, 2]], kept: 0 });
      const master = new BandMaster(ground);
      master.addFromBook();
      const answer = await master.solve({ integer: true, seconds: 20 });
      master.close();
      if (typeof answer === 'string') throw new Error(answer);
      // Three bands in four slots of two sheets, the thin one in a wide slot.
      expect(bands.map((b) => answer.bands[b])).toEqual([2, 1]);
      expect(answer.sheets).toEqual([2]);
      expect(answer.cost).toBe(2);
    },
  );
});
