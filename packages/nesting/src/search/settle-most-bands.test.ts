import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandAnswer } from '../master/band-master.js';
import { seededRandom } from '../random.js';
import { openBands } from './broken-bands.js';
import { groundOfOneSlot } from './one-slot.test.support.js';
import { settleLastBands } from './settle-last-bands.js';
import { settleMostBands } from './settle-most-bands.js';
import { SettledMaster } from './settled-master.js';

const LENGTH = 100;
const WIDTH = 10;
/** Slots of a sheet. */
const SLOTS = 3;
const KINDS = 5;
const FEW_OPEN = 7;
const never = () => false;

const orders = fc.record({
  lengths: fc.uniqueArray(fc.integer({ min: 13, max: 49 }), { minLength: KINDS, maxLength: KINDS }),
  quantities: fc.array(fc.integer({ min: 8, max: 30 }), { minLength: KINDS, maxLength: KINDS }),
  seed: fc.nat(1000),
});
type Order = typeof orders extends fc.Arbitrary<infer T> ? T : never;

/** The bands of so many settled sheets, none of them settled, and their linear plan. */
async function opened({ lengths, quantities }: Order, sheets: number) {
  const ground = groundOfOneSlot([LENGTH, WIDTH], lengths, quantities);
  const { demand } = ground;
  const book = ground.newBook();
  const slot = book.slot(0, 'along', WIDTH);
  book.addSheet({ box: 0, cuts: 'along', slots: [[slot, SLOTS]], kept: 0 });
  const classes = ground.classes.map((entry) => ({
    ...entry,
    supplies: entry.supplies.map((supply) => ({ ...supply, count: sheets, least: sheets })),
  }));
  const ones = demand.map(() => 1);
  const objective = { cost: undefined, caps: [] };
  const request = { demand, classes, objective, losses: ones, spare: ones, book, closed: true };
  const master = new SettledMaster(ground, request);
  master.settleSheet(0, sheets);
  const start = await master.solve(50);
  if (start?.duals === undefined) throw new Error('there is always a linear plan');
  return { ground, book, classes, master, start, duals: start.duals };
}

/** The fewest sheets whose broken bands give all pieces. */
async function fewestSheets(order: Order): Promise<number> {
  for (let sheets = 1; ; sheets++) {
    const { master, start } = await opened(order, sheets);
    master.close();
    if (start.cost <= 0) return sheets;
  }
}

const total = (counts: readonly number[]) => [...counts].reduce((sum, n) => sum + (n ?? 0), 0);

/** A master whose linear plan has always the same bands, and costs what the settled ones make it cost. */
function masterOf(amounts: readonly number[], costOf: (settled: readonly number[]) => number) {
  const bands = amounts.map(() => 0);
  const answer = (): BandAnswer => ({
    status: 'optimal',
    cost: costOf(bands),
    bands: amounts,
    sheets: [],
    supplies: [],
    short: [],
    duals: undefined,
  });
  return {
    bands,
    answer,
    settleBand: (band: number, count: number) => {
      bands[band] += count;
    },
    solve: async () => answer(),
  };
}

describe('settling most bands', () => {
  it('takes back whole numbers of a band that use up too much of the room', async () => {
    const master = masterOf([9, 12], ([first]) => (first > 2 ? -0.5 : -1));
    const answer = await settleMostBands(master, master.answer(), seededRandom(1), never);
    expect(master.bands).toEqual([2, 12]);
    expect(answer.cost).toBe(-1);
  });

  it('breaks up no further what would lack too much', async () => {
    const master = masterOf([20.5, 0.5], ([first, second]) => first + second - 3);
    const answer = await settleMostBands(master, master.answer(), seededRandom(1), never);
    expect(answer.cost).toBe(0);
  });
});

describe('settling most bands, and the last ones', () => {
  it('leaves few open where there is room, and an integer master fills those with all that lacks', async () => {
    let settledInAll = 0;
    await fc.assert(
      fc.asyncProperty(orders, async (order) => {
        const sheets = (await fewestSheets(order)) + 1;
        const { ground, book, classes, master, start } = await opened(order, sheets);
        try {
          const answer = await settleMostBands(master, start, seededRandom(order.seed), never);
          const settled = [...master.bands].map((count) => count ?? 0);
          expect(openBands(master, answer)).toBeLessThanOrEqual(FEW_OPEN + 1e-6);
          expect(total(settled)).toBeLessThanOrEqual(sheets * SLOTS);
          settled.forEach((count, band) => {
            expect(answer.bands[band]).toBeGreaterThanOrEqual(count - 1e-6);
          });
          settledInAll += total(settled);
          const { duals } = answer;
          if (duals === undefined) throw new Error('a linear plan has duals');
          const { demand } = ground;
          const request = { classes, caps: [], weights: demand.map(() => 1), book };
          const cut = await settleLastBands(
            ground,
            { ...request, sheets: [sheets], duals },
            master,
          );
          if (cut === undefined) throw new Error('there is room for a whole sheet more');
          expect(total(cut.bands)).toBeLessThanOrEqual(sheets * SLOTS);
          settled.forEach((count, band) => {
            const at = cut.book.bands.findIndex(
              ({ counts }) => String(counts) === String(book.bands[band].counts),
            );
            if (count > 0) expect(cut.bands[at]).toBeGreaterThanOrEqual(count);
          });
          demand.forEach((wanted, piece) => {
            const copies = cut.book.bands.map(
              ({ counts }) => counts.find(([of]) => of === piece)?.[1] ?? 0,
            );
            const given = copies.reduce((sum, each, band) => sum + each * cut.bands[band], 0);
            expect(given).toBeGreaterThanOrEqual(wanted);
          });
        } finally {
          master.close();
        }
      }),
      { numRuns: 25 },
    );
    expect(settledInAll).toBeGreaterThan(100);
  });

  it('settles nothing that leaves far too little, and nothing once it is over', async () => {
    await fc.assert(
      fc.asyncProperty(orders, async (order) => {
        const fewest = await fewestSheets(order);
        const { master, start } = await opened(order, fewest);
        try {
          const random = seededRandom(order.seed);
          expect(await settleMostBands(master, start, random, () => true)).toBe(start);
          expect(total(master.bands)).toBe(0);
          const answer = await settleMostBands(master, start, random, never);
          // Either few are open, or it stopped before more than half of a measure of pieces lacks.
          expect(answer.cost).toBeLessThanOrEqual(0.6);
        } finally {
          master.close();
        }
      }),
      { numRuns: 25 },
    );
  });
});
