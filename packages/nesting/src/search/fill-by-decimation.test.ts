import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { addBand } from './add-band.test.support.js';
import { decimateBands } from './decimate-bands.js';
import { fillByDecimation } from './fill-by-decimation.js';
import { fillOpenBands } from './fill-open-bands.js';
import { groundOfOneSlot } from './one-slot.test.support.js';

const LENGTH = 1_000;
const WIDTH = 10;
const KINDS = 12;
/** The bands of least waste that the plan is made of, and what any band that may be chosen leaves. */
const BEST = 25;
const WASTE = 12;
const BANDS = 60;
const SEEDS = Array.from({ length: 30 }, (_, index) => index + 1);

/** Every band of so little waste. */
function fullBands(lengths: readonly number[]): readonly (readonly number[])[] {
  const found: number[][] = [];
  const copies = lengths.map(() => 0);
  const fill = (kind: number, left: number): void => {
    if (left <= WASTE) found.push([...copies]);
    for (let next = kind; next < lengths.length; next++) {
      if (lengths[next] > left) continue;
      copies[next]++;
      fill(next, left - lengths[next]);
      copies[next]--;
    }
  };
  fill(0, LENGTH);
  return found;
}

/** Slots that bands of hardly any waste fill: there is a plan, and room for hardly a piece more. */
function tightOrder(seed: number) {
  const random = seededRandom(seed * 7919);
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const different = new Set<number>();
  while (different.size < KINDS) different.add(whole(180, 480));
  const lengths = [...different];
  const all = fullBands(lengths);
  const wasteOf = (band: readonly number[]) =>
    LENGTH - band.reduce((sum, copies, i) => sum + copies * lengths[i], 0);
  const best = all.toSorted((one, other) => wasteOf(one) - wasteOf(other)).slice(0, BEST);
  const demand = lengths.map(() => 0);
  for (let band = 0; band < BANDS; band++) {
    for (const [i, copies] of best[whole(0, best.length - 1)].entries()) demand[i] += copies;
  }
  const ground = groundOfOneSlot([LENGTH, WIDTH], lengths, demand);
  const book = ground.newBook();
  for (const copies of all) addBand(book, lengths, copies, WIDTH);
  return { ground, lengths, open: { book, bands: [...book.bands.keys()], slots: [BANDS], demand } };
}

type Order = ReturnType<typeof tightOrder>;

function cutsAll({ open: { book, demand } }: Order, counts: readonly number[]): boolean {
  const cut = demand.map(() => 0);
  book.bands.forEach((band, index) => {
    for (const [i, copies] of band.counts) cut[i] += copies * counts[index];
  });
  return demand.every((quantity, i) => cut[i] >= quantity);
}

function filled({ ground, open, lengths }: Order, seed: number, littleRoom: boolean) {
  const random = seededRandom(seed);
  return fillByDecimation(ground, { open, worth: lengths, weights: lengths, littleRoom, random });
}

async function filledToTheEnd({ ground, open, lengths }: Order, seed: number) {
  const end = decimateBands(open, lengths, 6, seededRandom(seed));
  return end && fillOpenBands(ground, end, lengths);
}

describe('filling slots by decimation', () => {
  it('finds plans that decimation to the end misses', async () => {
    const found = { toTheEnd: 0, withRoom: 0, withLittle: 0 };
    for (const seed of SEEDS) {
      const order = tightOrder(seed);
      const end = await filledToTheEnd(order, seed);
      if (end !== undefined && cutsAll(order, end)) found.toTheEnd++;
      for (const littleRoom of [true, false]) {
        const counts = await filled(order, seed, littleRoom);
        if (counts === undefined) continue;
        expect(counts.every((count) => Number.isInteger(count) && count >= 0)).toBe(true);
        expect(counts.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(BANDS);
        if (cutsAll(order, counts)) found[littleRoom ? 'withLittle' : 'withRoom']++;
      }
    }
    // Most plans are found either way; of those that are missed, a good part by a larger master.
    expect(found.toTheEnd).toBeGreaterThan(SEEDS.length / 2);
    expect(found.withRoom).toBeGreaterThan(found.toTheEnd + 1);
    expect(found.withLittle).toBeGreaterThan(found.toTheEnd + 1);
  }, 120_000);
});
