import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addBand } from './add-band.test.support.js';
import { fillSlots } from './fill-slots.js';
import { firstWithRoom } from './first-with-room.test.support.js';
import { groundOfOneSlot } from './one-slot.test.support.js';

const LENGTH = 100;
const WIDTH = 10;
const MOST_SLOTS = 9;

type Copies = readonly number[];

const KINDS = 5;
const orders = fc.record({
  lengths: fc.uniqueArray(fc.integer({ min: 26, max: 49 }), {
    minLength: KINDS,
    maxLength: KINDS,
  }),
  quantities: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: KINDS, maxLength: KINDS }),
});

/** The linear plan over all bands of the fewest slots that leave room, and what is known after it. */
async function planned(lengths: Copies, quantities: Copies) {
  const ground = groundOfOneSlot([LENGTH, WIDTH], lengths, quantities);
  const all = everyBand(lengths, quantities);
  const book = ground.newBook();
  for (const copies of all) addBand(book, lengths, copies, WIDTH);
  const choices = Array.from({ length: MOST_SLOTS }, (_, fewer) => [fewer + 1]);
  const plan = await firstWithRoom(ground, book, choices);
  if (plan === undefined) return undefined;
  // As after column generation, not all bands are known.
  const known = ground.newBook();
  all.forEach((copies, band) => {
    if (plan.bands[band] > 0) addBand(known, lengths, copies, WIDTH);
  });
  return { ground, all, known, slots: plan.slots[0], duals: plan.duals, room: plan.room };
}

/** All bands that fit the length, with no more of a piece in one than are wanted. */
function everyBand(lengths: Copies, quantities: Copies): readonly Copies[] {
  let bands: Copies[] = [[]];
  lengths.forEach((_, i) => {
    bands = bands.flatMap((band) =>
      Array.from({ length: quantities[i] + 1 }, (_, copies) => [...band, copies]),
    );
  });
  const taken = (band: Copies) => band.reduce((sum, copies, i) => sum + copies * lengths[i], 0);
  return bands.filter((band) => taken(band) > 0 && taken(band) <= LENGTH);
}

/** Whether so many bands give all the pieces, by trying all of them. */
function canCut(wanted: Copies, slots: number, bands: readonly Copies[], from = 0): boolean {
  if (wanted.every((count) => count <= 0)) return true;
  if (slots === 0) return false;
  return bands.some(
    (band, i) =>
      i >= from &&
      canCut(
        wanted.map((count, p) => count - band[p]),
        slots - 1,
        bands,
        i,
      ),
  );
}

describe('whole bands for whole slots', () => {
  it('are found, or there are none that lose little, as trying all of them says', async () => {
    const seen = { found: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(orders, async ({ lengths, quantities }) => {
        const set = await planned(lengths, quantities);
        if (set === undefined) return;
        const { ground, all, known, slots, duals, room } = set;
        const filled = await fillSlots(ground, { book: known, slots: [slots], duals, room });
        if (filled === 'none') {
          const loss = (band: Copies) =>
            duals.slots[0] - band.reduce((sum, copies, i) => sum + copies * duals.pieces[i], 0);
          const little = all.filter((band) => loss(band) <= room / 2);
          expect(canCut(quantities, slots, little)).toBe(false);
          seen.none++;
          return;
        }
        if (filled === undefined) throw new Error('so few bands are tried whole');
        const { book, bands } = filled;
        const cut = quantities.map(() => 0);
        bands.forEach((count, band) => {
          for (const [index, copies] of book.bands[band].counts) cut[index] += copies * count;
        });
        expect(bands.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(slots);
        for (const [i, count] of cut.entries()) {
          expect(count).toBeGreaterThanOrEqual(quantities[i]);
        }
        expect(canCut(quantities, slots, all)).toBe(true);
        seen.found++;
      }),
      { numRuns: 300 },
    );
    expect(seen.found).toBeGreaterThan(100);
    expect(seen.none).toBeGreaterThan(5);
  });
});
