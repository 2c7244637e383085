import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addBand } from './add-band.test.support.js';
import { bandPlaces } from './band-places.js';
import { groundOfOneSlot } from './one-slot.test.support.js';
import { planOfTwoSlots } from './two-slots.test.support.js';

describe('places of bands', () => {
  it('are all slots that a band may lie in, with what it loses there', async () => {
    const seen = { own: 0, wider: 0, lossy: 0 };
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(fc.integer({ min: 26, max: 49 }), { minLength: 4, maxLength: 4 }),
        fc.array(fc.integer({ min: 3, max: 9 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 3, max: 9 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.nat(),
        async (lengths, quantities, wideSlots, atMost, seed) => {
          const plan = await planOfTwoSlots(lengths, quantities, wideSlots, seed);
          if (plan === undefined) return;
          const { book, slots, duals, bands } = plan;
          const places = bandPlaces(book, slots, duals, atMost);
          const told = new Map(places.map((place) => [`${place.band} ${place.slot}`, place]));
          expect(told.size).toBe(places.length);
          for (const [band, { counts, slot: own }] of book.bands.entries()) {
            const worth = counts.reduce((sum, [i, copies]) => sum + copies * duals.pieces[i], 0);
            const mayLie = band < bands.narrow.length ? [0, 1] : [1];
            for (const slot of [0, 1]) {
              const place = told.get(`${band} ${slot}`);
              const loss = duals.slots[slot] - worth;
              const due = mayLie.includes(slot) && slots[slot] > 0;
              if (!due || loss > atMost + 1e-9) {
                expect(place).toBeUndefined();
                seen.lossy++;
              } else if (loss < atMost - 1e-9) {
                expect(place?.loss).toBeCloseTo(Math.max(0, loss), 9);
                expect(place?.copies).toEqual(counts);
                seen[slot === own ? 'own' : 'wider']++;
              }
            }
          }
        },
      ),
      { numRuns: 100 },
    );
    expect(seen.own).toBeGreaterThan(50);
    expect(seen.wider).toBeGreaterThan(20);
    expect(seen.lossy).toBeGreaterThan(50);
  });

  it('have the same pieces once in a slot, whichever slot these were listed in', () => {
    const lengths = [40, 30];
    const ground = groundOfOneSlot([100, 13], lengths, [5, 5]);
    const book = ground.newBook();
    addBand(book, lengths, [1, 2], 10);
    addBand(book, lengths, [1, 2], 13);
    const duals = { pieces: [2, 1], slots: [4, 5], classes: [], caps: [] };
    const places = bandPlaces(book, [3, 3], duals, 1);
    expect(places.map(({ slot, loss }) => [slot, loss])).toEqual([
      [0, 0],
      [1, 1],
    ]);
  });
});
