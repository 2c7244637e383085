import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import type { CuttingProblem } from '../problem.js';
import { seededRandom } from '../random.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { SettledMaster } from './settled-master.js';

const features = { limitedStock: true, offcuts: true, packs: true } as const;
const MANY_ROUNDS = 500;

/** A master that knows no pattern yet; undefined where the stock is not enough for first fit. */
function opened(problem: CuttingProblem) {
  const { ground, start } = groundOf({ ...problem, keep: [] });
  if (start === undefined) return undefined;
  const { classes, demand, objective, penalties, newBook } = ground;
  const book = newBook();
  const master = new SettledMaster(ground, { demand, classes, objective, losses: penalties, book });
  return { ground, book, master };
}

/** What the linear plan of the whole problem costs. */
async function linearCost({ ground }: NonNullable<ReturnType<typeof opened>>): Promise<number> {
  const master = new BandMaster(ground);
  try {
    const { answer } = await solveLinear({ ...ground, master, enough: () => false });
    return answer?.cost ?? Number.NaN;
  } finally {
    master.close();
  }
}

describe('SettledMaster', () => {
  it('comes to the linear plan of the whole problem by patterns that it prices itself', async () => {
    let several = 0;
    await fc.assert(
      fc.asyncProperty(randomOfKind(features, SMALL), async (problem) => {
        const set = opened(problem);
        if (set === undefined) return;
        const answer = await set.master.solve(MANY_ROUNDS);
        set.master.close();
        expect(answer?.cost).toBeCloseTo(await linearCost(set), 3);
        if (set.book.bands.length > 1) several++;
      }),
      { numRuns: 40 },
    );
    expect(several).toBeGreaterThan(10);
  });

  it('keeps what is settled, counts what that leaves, and lets go of it again', async () => {
    const seen = { dearer: 0, settled: 0, restored: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind(features, SMALL), fc.nat(1000), async (problem, seed) => {
        const set = opened(problem);
        if (set === undefined) return;
        const { master, book, ground } = set;
        const random = seededRandom(seed);
        const before = await master.solve(MANY_ROUNDS);
        if (before === undefined) throw new Error('no linear plan');
        const bands = before.bands.map((amount) => (random() < 0.5 ? Math.ceil(amount - 1e-6) : 0));
        const sheets = before.sheets.map((amount) => (random() < 0.3 ? Math.floor(amount) : 0));
        const each = (sign: number) => {
          bands.forEach((count, band) => {
            if (count > 0) master.settleBand(band, sign * count);
          });
          sheets.forEach((count, sheet) => {
            if (count > 0) master.settleSheet(sheet, sign * count);
          });
        };
        each(1);
        const cut = ground.demand.map(() => 0);
        const needed = book.slots.map(() => 0);
        bands.forEach((count, band) => {
          needed[book.bands[band].slot] += count;
          for (const [piece, copies] of book.bands[band].counts) cut[piece] += copies * count;
        });
        expect(master.left).toEqual(ground.demand.map((q, piece) => Math.max(0, q - cut[piece])));
        expect(book.slots.map((_, slot) => master.needed[slot] ?? 0)).toEqual(needed);
        const settled = await master.solve(MANY_ROUNDS);
        if (settled !== undefined) {
          seen.settled++;
          if (settled.cost > before.cost + 0.01) seen.dearer++;
          bands.forEach((count, band) => {
            expect(settled.bands[band]).toBeGreaterThanOrEqual(count - 1e-6);
          });
          sheets.forEach((count, sheet) => {
            expect(settled.sheets[sheet]).toBeGreaterThanOrEqual(count - 1e-6);
          });
        }
        each(-1);
        expect(master.left).toEqual(ground.demand);
        // Patterns that came up meanwhile can only make it cheaper.
        const after = await master.solve(MANY_ROUNDS);
        master.close();
        // Bands with a surplus are of no use any more once others have been settled.
        const surplus = book.bands.some(({ counts }) =>
          counts.some(([piece, copies]) => copies > ground.demand[piece]),
        );
        const most = Math.min(
          surplus ? Number.POSITIVE_INFINITY : before.cost,
          settled?.cost ?? Number.POSITIVE_INFINITY,
        );
        expect(after?.cost ?? Number.NaN).toBeLessThanOrEqual(most + 1e-3);
        if (!surplus) seen.restored++;
      }),
      { numRuns: 40 },
    );
    expect(seen.settled).toBeGreaterThan(10);
    expect(seen.dearer).toBeGreaterThan(3);
    expect(seen.restored).toBeGreaterThan(10);
  });

  it('takes exactly as many of a supply as are settled', async () => {
    let taken = 0;
    await fc.assert(
      fc.asyncProperty(randomOfKind(features, SMALL), fc.nat(3), async (problem, more) => {
        const set = opened(problem);
        if (set === undefined) return;
        const { master } = set;
        const before = await master.solve(MANY_ROUNDS);
        const entry = master.classes.findIndex(({ supplies }) => supplies.length > 0);
        const amount = before?.supplies[entry]?.[0];
        if (amount === undefined) throw new Error('no linear plan');
        const count = Math.min(Math.floor(amount) + more, master.classes[entry].supplies[0].count);
        master.settleSupply(entry, 0, count);
        const after = await master.solve(MANY_ROUNDS);
        master.close();
        if (after === undefined || after.short.some((lack) => lack > 1e-6)) return;
        taken++;
        expect(after.supplies[entry][0]).toBeCloseTo(count, 5);
      }),
      { numRuns: 40 },
    );
    expect(taken).toBeGreaterThan(10);
  });
});
