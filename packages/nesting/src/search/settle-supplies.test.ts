import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { money, totalCost } from '../master/objective.js';
import { sheet } from '../plan-cutting.test.support.js';
import type { Sheet } from '../problem.js';
import { groundOf } from './ground.test.support.js';
import { settleSupplies } from './settle-supplies.js';
import { SettledMaster } from './settled-master.js';

const MANY_ROUNDS = 200;
/** Further from the broken number than any number here is. */
const FAR = 50;

const pieces = fc
  .array(
    fc.record({
      length: fc.integer({ min: 10, max: 40 }),
      width: fc.integer({ min: 4, max: 15 }),
      quantity: fc.integer({ min: 5, max: 30 }),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((all) => all.map((own, index) => ({ ...own, id: `piece ${index}`, mayTurn: true })));

/** A master of spare pieces for at most so much money, as whole sheets are settled with. */
function opened(
  wanted: ReturnType<typeof pieces.generate>['value'],
  stock: readonly Sheet[],
  atMost: number,
) {
  const { ground, start } = groundOf({ pieces: wanted, stock, shear: { firstCut: 'either' } });
  const { classes, demand, newBook } = ground;
  const book = newBook();
  for (const { pattern } of start ?? []) book.addPattern(pattern);
  const master = new SettledMaster(ground, {
    demand,
    classes,
    objective: { cost: undefined, caps: [{ measure: money, atMost }] },
    losses: demand.map(() => 1),
    spare: demand.map(() => 1),
    book,
  });
  return { ground, master };
}

describe('settleSupplies', () => {
  it('takes the whole packs of one sheet that leave most room for the money', async () => {
    const seen = { room: 0, lack: 0 };
    await fc.assert(
      fc.asyncProperty(
        pieces,
        fc.constantFrom(1, 2, 3),
        fc.integer({ min: 10, max: 150 }),
        async (wanted, packSize, atMost) => {
          const stock = [sheet('s', 90, 60, { price: 7, packSize })];
          const packs = Math.floor(atMost / (7 * packSize));
          const { ground, master } = opened(wanted, stock, atMost);
          const found = await settleSupplies(
            ground,
            master,
            await master.solve(MANY_ROUNDS),
            FAR,
            MANY_ROUNDS,
          );
          master.close();
          const rooms: number[] = [];
          for (let taken = 0; taken <= packs; taken++) {
            const { master: other } = opened(wanted, stock, atMost);
            other.settleSupply(0, 0, taken * packSize);
            const answer = await other.solve(MANY_ROUNDS);
            other.close();
            if (answer !== undefined) rooms.push(-answer.cost);
          }
          const most = Math.max(...rooms);
          expect(-(found?.cost ?? Number.NaN)).toBeCloseTo(most, 3);
          seen[most > 0 ? 'room' : 'lack']++;
        },
      ),
      { numRuns: 25 },
    );
    expect(seen.room).toBeGreaterThan(4);
    expect(seen.lack).toBeGreaterThan(4);
  });

  it('takes whole packs of two sheets for no more than the money, nearly the best of all numbers', async () => {
    const seen = { best: 0, all: 0 };
    await fc.assert(
      fc.asyncProperty(pieces, fc.integer({ min: 30, max: 110 }), async (wanted, atMost) => {
        const stock = [
          sheet('s', 90, 60, { price: 11 }),
          sheet('t', 60, 50, { price: 6, packSize: 2 }),
        ];
        const { ground, master } = opened(wanted, stock, atMost);
        const start = await master.solve(MANY_ROUNDS);
        const found = await settleSupplies(ground, master, start, FAR, MANY_ROUNDS);
        master.close();
        if (found === undefined) throw new Error('nothing settled');
        const taken = found.supplies.map((of) => of.reduce((sum, amount) => sum + amount, 0));
        for (const [entry, { supplies }] of ground.classes.entries()) {
          const packs = taken[entry] / supplies[0].unit;
          expect(Math.abs(packs - Math.round(packs))).toBeLessThan(1e-4);
        }
        const whole = taken.map(Math.round);
        expect(totalCost(ground.classes, whole, money)).toBeLessThanOrEqual(atMost);
        let most = Number.NEGATIVE_INFINITY;
        for (let s = 0; 11 * s <= atMost; s++) {
          const { master: other, ground: own } = opened(wanted, stock, atMost);
          const t = 2 * Math.floor((atMost - 11 * s) / 12);
          const dear = own.classes.findIndex(({ supplies }) => supplies[0].price === 11);
          other.settleSupply(dear, 0, s);
          other.settleSupply(1 - dear, 0, t);
          const answer = await other.solve(MANY_ROUNDS);
          other.close();
          most = Math.max(most, -(answer?.cost ?? Number.POSITIVE_INFINITY));
        }
        expect(-found.cost).toBeLessThanOrEqual(most + 1e-3);
        seen.all++;
        if (-found.cost > most - 1e-3) seen.best++;
      }),
      { numRuns: 25 },
    );
    expect(seen.best / seen.all).toBeGreaterThan(0.7);
  });

  it('finds numbers with room for the least money, though patterns that suit them are not known yet', async () => {
    const seen = { all: 0, found: 0 };
    const stock = [sheet('s', 90, 60, { price: 11 }), sheet('t', 47, 41, { price: 4 })];
    /** Room with so many sheets of each, all patterns known. */
    const roomOf = async (wanted: Parameters<typeof opened>[0], s: number, t: number) => {
      const { master, ground } = opened(wanted, stock, 11 * s + 4 * t);
      const dear = ground.classes.findIndex(({ supplies }) => supplies[0].price === 11);
      master.settleSupply(dear, 0, s);
      master.settleSupply(1 - dear, 0, t);
      const answer = await master.solve(MANY_ROUNDS);
      master.close();
      return -(answer?.cost ?? Number.POSITIVE_INFINITY);
    };
    await fc.assert(
      fc.asyncProperty(pieces, async (wanted) => {
        let least = 4;
        const any = async () => {
          for (let s = 0; 11 * s <= least; s++) {
            if ((least - 11 * s) % 4 !== 0) continue;
            if ((await roomOf(wanted, s, (least - 11 * s) / 4)) > 0.01) return true;
          }
          return false;
        };
        while (!(await any())) least++;
        // Patterns of first fit, and what comes up soon for the broken plan.
        const { ground, master } = opened(wanted, stock, least);
        const start = await master.solve(4);
        const found = await settleSupplies(ground, master, start, FAR, 1);
        master.close();
        seen.all++;
        if (found !== undefined && found.cost < 0) seen.found++;
      }),
      { numRuns: 60 },
    );
    expect(seen.found / seen.all).toBeGreaterThan(0.97);
  });
});
