import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { addBand } from './add-band.test.support.js';
import { decimateBands } from './decimate-bands.js';
import { fillOpenBands } from './fill-open-bands.js';
import { groundOfOneSlot } from './one-slot.test.support.js';

const LENGTH = 100;
const WIDTH = 10;
const KINDS = 4;

const orders = fc.record({
  lengths: fc.uniqueArray(fc.integer({ min: 21, max: 49 }), {
    minLength: KINDS,
    maxLength: KINDS,
  }),
  /** Whole bands, by index, that make up what is wanted: there is a plan. */
  bands: fc.array(fc.nat(1_000), { minLength: 1, maxLength: 30 }),
  seed: fc.nat(10_000),
});
type Order = typeof orders extends fc.Arbitrary<infer T> ? T : never;

/** All bands that fit the length, none of them empty. */
function everyBand(lengths: readonly number[]): readonly (readonly number[])[] {
  const all = lengths.reduce<readonly (readonly number[])[]>(
    (before, length) =>
      before.flatMap((band) =>
        Array.from({ length: Math.floor(LENGTH / length) + 1 }, (_, copies) => [...band, copies]),
      ),
    [[]],
  );
  const taken = (band: readonly number[]) =>
    band.reduce((sum, copies, i) => sum + copies * lengths[i], 0);
  return all.filter((band) => taken(band) > 0 && taken(band) <= LENGTH);
}

function opened({ lengths, bands }: Order) {
  const all = everyBand(lengths);
  const demand = lengths.map((_, i) =>
    bands.reduce((sum, band) => sum + all[band % all.length][i], 0),
  );
  const ground = groundOfOneSlot([LENGTH, WIDTH], lengths, demand);
  const book = ground.newBook();
  for (const copies of all) addBand(book, lengths, copies, WIDTH);
  return { ground, open: { book, bands: [...book.bands.keys()], slots: [bands.length], demand } };
}

/** Copies of each piece that so many of each band cut. */
function cutBy({ book }: ReturnType<typeof opened>['open'], counts: readonly number[]) {
  const cut = new Array<number>(KINDS).fill(0);
  book.bands.forEach(({ counts: copies }, band) => {
    for (const [i, count] of copies) cut[i] += count * counts[band];
  });
  return cut;
}

describe('settling bands by decimation', () => {
  it('tells truly what is settled and what is open, and settles no more than is wanted', () => {
    fc.assert(
      fc.property(orders, fc.nat(10), (order, left) => {
        const { open } = opened(order);
        const done = decimateBands(open, order.lengths, left, seededRandom(order.seed));
        if (done === undefined) throw new Error('not decimated');
        const settled = done.taken.reduce((sum, count) => sum + count, 0);
        expect(done.taken.every((count) => Number.isInteger(count) && count >= 0)).toBe(true);
        expect(done.slots).toEqual([open.slots[0] - settled]);
        const cut = cutBy(open, done.taken);
        expect(done.demand).toEqual(open.demand.map((quantity, i) => quantity - cut[i]));
        expect(done.demand.every((count) => count >= 0)).toBe(true);
        // It ends early only where all is cut, or nothing fits what is left.
        const wanted = done.demand.some((count) => count > 0);
        if (done.slots[0] > left && wanted) expect(done.lacking).toBeGreaterThan(0.1);
        else expect(done.slots[0]).toBeGreaterThanOrEqual(Math.min(left, open.slots[0]));
      }),
      { numRuns: 60 },
    );
  });

  it('leaves what whole bands can mostly fill, to the last piece', async () => {
    const seen = { whole: 0, lacking: 0 };
    await fc.assert(
      fc.asyncProperty(orders, async (order) => {
        const { ground, open } = opened(order);
        const most = decimateBands(open, order.lengths, 6, seededRandom(order.seed));
        if (most === undefined) throw new Error('not decimated');
        const counts = await fillOpenBands(ground, most, order.lengths);
        if (counts === undefined) throw new Error('not filled');
        expect(counts.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(open.slots[0]);
        const cut = cutBy(open, counts);
        seen[open.demand.every((quantity, i) => cut[i] >= quantity) ? 'whole' : 'lacking']++;
      }),
      { numRuns: 80 },
    );
    // There always is a plan, though it may leave no room for a single piece more.
    expect(seen.whole).toBeGreaterThan(seen.lacking * 4);
  });

  it('gives up when it is over', () => {
    const { open } = opened({ lengths: [25, 30, 35, 40], bands: [3, 8, 11, 15], seed: 1 });
    const over = () => true;
    expect(decimateBands(open, [25, 30, 35, 40], 0, seededRandom(1), over)).toBeUndefined();
  });

  it('is the same for the same random numbers', () => {
    fc.assert(
      fc.property(orders, (order) => {
        const run = () =>
          decimateBands(opened(order).open, order.lengths, 3, seededRandom(order.seed));
        expect({ ...run(), book: undefined }).toEqual({ ...run(), book: undefined });
      }),
      { numRuns: 20 },
    );
  });

  it('may lay narrow bands in wider slots that have none of their own', () => {
    const { open } = opened({ lengths: [25, 30, 35, 40], bands: [3, 8, 11, 15], seed: 1 });
    const wide = open.book.slot(0, 'along', WIDTH + 3);
    const slots = open.book.slots.map((_, slot) => (slot === wide ? 4 : 0));
    const done = decimateBands({ ...open, slots }, [25, 30, 35, 40], 0, seededRandom(1));
    expect(done?.taken.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(0);
  });
});

describe('filling open bands', () => {
  it('finds all pieces where few bands do, with none settled before', async () => {
    await fc.assert(
      fc.asyncProperty(orders, async (order) => {
        const few = { ...order, bands: order.bands.slice(0, 5) };
        const { ground, open } = opened(few);
        const none = open.book.bands.map(() => 0);
        const all = { ...open, taken: none, lacking: 0 };
        const counts = await fillOpenBands(ground, all, order.lengths);
        if (counts === undefined) throw new Error('not filled');
        const cut = cutBy(open, counts);
        open.demand.forEach((quantity, i) => {
          expect(cut[i]).toBeGreaterThanOrEqual(quantity);
        });
      }),
      { numRuns: 30 },
    );
  });
});
