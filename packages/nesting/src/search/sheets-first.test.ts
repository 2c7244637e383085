import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legal } from '../pattern/legal.js';
import type { CuttingProblem } from '../problem.js';
import { seededRandom } from '../random.js';
import { randomOfKind } from '../random-kinds.test.support.js';
import { Incumbent } from './incumbent.js';
import { sheetsUsed } from './planned.js';
import { missingWeight } from './refill.js';
import { manyOfEach, rooted, stockOfAllKinds } from './rooted.test.support.js';
import { BandSettling } from './settle-bands.js';
import { type SettledSheets, SheetSettling } from './settle-sheets.js';
import { SheetsFirst } from './sheets-first.js';

/** Sheets settled so many times, which must be other ones each time. */
async function settled(
  { ground, request }: NonNullable<Awaited<ReturnType<typeof rooted>>>,
  times: number,
  seed: number,
  fewSheets = false,
): Promise<readonly SettledSheets[]> {
  const settling = await SheetSettling.open(ground, { ...request, fewSheets });
  const random = seededRandom(seed);
  const all: SettledSheets[] = [];
  for (let time = 0; time < times; time++) {
    const sheets = await (time === 0 ? settling?.settle(random) : settling?.settleLikely(random));
    if (sheets !== undefined) all.push(sheets);
  }
  return all;
}

describe('settling sheets', () => {
  it('takes whole sheets that keep to the supplies and the caps, other ones each time', async () => {
    const seen = { settled: 0, room: 0, packs: 0, again: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind(stockOfAllKinds, manyOfEach),
        fc.nat(1000),
        fc.boolean(),
        async (problem, seed, fewSheets) => {
          const set = await rooted(problem, 105);
          if (set === undefined) return;
          const all = await settled(set, 3, seed, fewSheets);
          seen.again += Math.max(0, all.length - 1);
          expect(new Set(all.map(({ sheets }) => sheets.join())).size).toBe(all.length);
          for (const { sheets, book, classes, room } of all) {
            seen.settled++;
            if (room > 0) seen.room++;
            const used = new Array<number>(set.boxes.length).fill(0);
            sheets.forEach((count, sheet) => {
              expect(Number.isInteger(count) && count >= 0).toBe(true);
              used[book.sheets[sheet].box] += count;
            });
            used.forEach((count, box) => {
              const { supplies } = set.ground.classes[box];
              for (const { least, unit } of classes[box].supplies) {
                expect(least % unit).toBe(0);
                if (least > 0 && unit > 1) seen.packs++;
              }
              expect(count).toBeLessThanOrEqual(
                supplies.reduce((sum, { count }) => sum + count, 0),
              );
            });
            expect(set.costOf(used)).toBeLessThanOrEqual(set.atMost);
          }
        },
      ),
      { numRuns: 40 },
    );
    expect(seen.settled).toBeGreaterThan(12);
    expect(seen.room).toBeGreaterThan(6);
    expect(seen.packs).toBeGreaterThan(2);
    expect(seen.again).toBeGreaterThan(2);
  });

  it('tells of room that bands can be settled in', async () => {
    const seen = { room: 0, lack: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind(stockOfAllKinds, manyOfEach),
        fc.constantFrom(80, 105),
        fc.nat(1000),
        fc.boolean(),
        async (problem, percent, seed, fewSheets) => {
          const set = await rooted(problem, percent);
          const [sheets] = set === undefined ? [] : await settled(set, 1, seed, fewSheets);
          if (set === undefined || sheets === undefined) return;
          // More bands are known to the one who settles them, and no more than 6 of each count.
          const bands = await BandSettling.open(set.ground, set.request, sheets);
          const { room } = sheets;
          seen[room > 0 ? 'room' : 'lack']++;
          if (room >= 0) expect(bands?.room ?? Number.NaN).toBeGreaterThanOrEqual(room - 1e-6);
          bands?.close();
        },
      ),
      { numRuns: 20 },
    );
    expect(seen.room).toBeGreaterThan(3);
    expect(seen.lack).toBeGreaterThan(3);
  });

  it('finds more room for few sheets among patterns listed for their numbers', async () => {
    const seen = { more: 0, less: 0 };
    for (let seed = 1; seed <= 8; seed++) {
      const rooms: number[] = [];
      for (const fewSheets of [false, true]) {
        const set = await rooted(stripsOnFewSheets(seed), 88);
        if (set === undefined) throw new Error('first fit found nothing');
        // What came up on the way to the linear plan, as the search has it then.
        const pool = set.ground.newBook();
        const { bands, sheets } = set.ground.book;
        pool.adopt(set.ground.book, [...bands.keys()], [...sheets.keys()]);
        const asked = { ...set, request: { ...set.request, pool } };
        const [first] = await settled(asked, 1, seed, fewSheets);
        rooms.push(first?.room ?? Number.NEGATIVE_INFINITY);
      }
      const [among, listed] = rooms;
      if (listed > among + 1e-6) seen.more++;
      if (listed < among - 1e-6) seen.less++;
    }
    expect(seen.more).toBeGreaterThan(3 * seen.less);
    expect(seen.more).toBeGreaterThan(4);
  });
});

/** 5 to 12 of each of 16 strips of three widths, on sheets of two sizes and four offcuts. */
function stripsOnFewSheets(seed: number): CuttingProblem {
  const random = seededRandom(seed);
  const between = (least: number, most: number) =>
    least + Math.floor(random() * (most - least + 1));
  const widths = [between(12, 17), between(18, 22), between(23, 28)];
  return {
    pieces: Array.from({ length: 16 }, (_, index) => ({
      id: `strip ${index + 1}`,
      length: between(50, 300),
      width: widths[index % 3],
      quantity: between(5, 12),
      mayTurn: true,
    })),
    stock: [
      {
        kind: 'sheet',
        id: 'large',
        length: 500,
        width: 320,
        price: 1150,
        onHand: 0,
        canBuy: 'any',
      },
      { kind: 'sheet', id: 'small', length: 356, width: 256, price: 690, onHand: 0, canBuy: 'any' },
      ...Array.from({ length: 4 }, (_, index) => ({
        kind: 'offcut' as const,
        id: `offcut ${index + 1}`,
        length: between(75, 275),
        width: between(20, 175),
      })),
    ],
    shear: { firstCut: 'either', stages: 2 },
  };
}

describe('settling bands', () => {
  it('cuts what it says, of sheets that keep to the caps, time after time', async () => {
    const seen = { whole: 0, partly: 0, decimated: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind(stockOfAllKinds, manyOfEach),
        fc.constantFrom(70, 105),
        fc.nat(1000),
        async (problem, percent, seed) => {
          const set = await rooted(problem, percent);
          const [sheets] = set === undefined ? [] : await settled(set, 1, seed);
          if (set === undefined || sheets === undefined) return;
          const { ground, request, boxes, rules } = set;
          const bands = await BandSettling.open(ground, request, sheets);
          if (bands === undefined) return;
          const random = seededRandom(seed);
          for (let time = 0; time < 4; time++) {
            const decimated = time === 3;
            const partial = await (decimated ? bands.decimate(random) : bands.settle(random));
            if (partial === undefined) continue;
            const { planned, missing } = partial;
            for (const { pattern, count } of planned) {
              expect(Number.isInteger(count) && count > 0).toBe(true);
              expect(legal(pattern.part, boxes[pattern.stockClass], rules)).toBe(true);
            }
            expect(missing).toBe(missingWeight(ground.demand, planned, request.weights));
            const used = sheetsUsed(planned, boxes.length);
            expect(set.costOf(used)).toBeLessThanOrEqual(set.atMost);
            seen[missing === 0 ? 'whole' : 'partly']++;
            if (decimated) seen.decimated++;
          }
          bands.close();
        },
      ),
      { numRuns: 20 },
    );
    expect(seen.whole).toBeGreaterThan(8);
    expect(seen.partly).toBeGreaterThan(4);
    expect(seen.decimated).toBeGreaterThan(2);
  });
});

describe('sheets first', () => {
  it('plans alike for the same seed, for less than the best plan so far', async () => {
    const seen = { planned: 0, again: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind(stockOfAllKinds, manyOfEach),
        fc.constantFrom(50, 90),
        fc.nat(1000),
        fc.boolean(),
        async (problem, percent, seed, few) => {
          const set = await rooted(problem, 105);
          if (set === undefined) return;
          const { ground, guide, start, request } = set;
          const cost = (set.costOf(sheetsUsed(start, ground.classes.length)) * percent) / 100;
          const plans = async () => {
            const incumbent = new Incumbent(ground, {});
            incumbent.offer(start);
            incumbent.raise(cost * ground.scale);
            const pool = ground.newBook();
            const { bands, sheets } = request.pool;
            pool.adopt(request.pool, [...bands.keys()], [...sheets.keys()]);
            const linear = { cost, meanWorth: 2, sheets: few ? 40 : 41 };
            const random = seededRandom(seed);
            const first = new SheetsFirst(ground, incumbent, guide, pool, linear, random);
            const less = incumbent.target;
            return { less, found: [await first.plan(), await first.plan()] };
          };
          const [one, other] = [await plans(), await plans()];
          expect(other).toEqual(one);
          one.found.forEach((partial, time) => {
            if (partial === undefined) return;
            seen[time === 0 ? 'planned' : 'again']++;
            const used = sheetsUsed(partial.planned, ground.classes.length);
            expect(set.costOf(used)).toBeLessThanOrEqual(one.less);
          });
        },
      ),
      { numRuns: 20 },
    );
    expect(seen.planned).toBeGreaterThan(2);
    expect(seen.again).toBeGreaterThan(0);
  });
});
