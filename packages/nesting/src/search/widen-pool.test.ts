import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import { randomOfKind } from '../random-kinds.test.support.js';
import { jointCosts } from './reduced-costs.js';
import { manyOfEach, rooted, stockOfAllKinds } from './rooted.test.support.js';
import { widenPool } from './widen-pool.js';

describe('widening a pool by a linear plan that counts spare pieces', () => {
  it('keeps what it had in its order, gives every slot a dual, and adds patterns', async () => {
    const seen = { wide: 0, more: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind(stockOfAllKinds, manyOfEach), async (problem) => {
        const set = await rooted(problem, 105);
        if (set === undefined) return;
        const { ground, request } = set;
        const { pool: all, caps, losses } = request;
        const { demand, classes, engines } = ground;
        const objective = { cost: undefined, caps };
        const spare = demand.map(() => 1);
        const asked = { demand, classes, objective, penalties: losses, spare, engines };
        const planOf = async (book: typeof all) => {
          const master = new BandMaster({ ...asked, book });
          master.addFromBook();
          const answer = await master.solve({ integer: false, seconds: 10 });
          master.close();
          return typeof answer === 'string' ? undefined : answer;
        };
        const first = await planOf(all);
        if (first === undefined) return;
        // A pool of no more than its plan takes.
        const used = (amounts: readonly number[]) =>
          [...amounts.keys()].filter((index) => amounts[index] > 1e-6);
        const pool = ground.newBook();
        pool.adopt(all, used(first.bands), used(first.sheets));
        const answer = await planOf(pool);
        if (answer?.duals === undefined) return;
        const wide = widenPool(ground, { pool, caps, losses, classes, answer, most: 10_000 });
        if (wide === undefined) return;
        seen.wide++;
        const { duals } = wide.answer;
        if (duals === undefined) throw new Error('the duals are gone');
        const keyOf = (book: typeof pool, slot: number) =>
          `${book.slots[slot].family} ${book.slots[slot].extent}`;
        for (const [index, { slot, counts }] of pool.bands.entries()) {
          const band = wide.pool.bands[index];
          expect([keyOf(wide.pool, band.slot), band.counts]).toEqual([keyOf(pool, slot), counts]);
        }
        for (const [index, { box, cuts }] of pool.sheets.entries()) {
          expect(wide.pool.sheets[index]).toMatchObject({ box, cuts });
        }
        expect(duals.slots.length).toBe(wide.pool.slots.length);
        pool.slots.forEach((slot, index) => {
          const at = wide.pool.find(slot) ?? -1;
          expect(duals.slots[at]).toBe(answer.duals?.slots[index] ?? duals.slots[at]);
        });
        const again = await planOf(wide.pool);
        expect(again?.cost ?? Number.NaN).toBeLessThanOrEqual(answer.cost + 1e-6);
        // What the linear plan takes costs nothing at its duals, and no pattern is without a cost.
        const costs = jointCosts(wide.pool, duals);
        answer.sheets.forEach((amount, sheet) => {
          if (amount > 1e-6) expect(Math.abs(costs.sheets[sheet])).toBeLessThan(1e-6);
        });
        expect(costs.sheets.every(Number.isFinite)).toBe(true);
        if (wide.pool.sheets.length > pool.sheets.length) seen.more++;
      }),
      { numRuns: 20 },
    );
    expect(seen.wide).toBeGreaterThan(8);
    expect(seen.more).toBeGreaterThan(6);
  });
});
