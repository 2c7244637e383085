import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandPlaces } from './band-places.js';
import { fillPlaces } from './fill-places.js';
import { type Copies, planOfTwoSlots } from './two-slots.test.support.js';

const NODES = 10_000;

/** Whether whole bands in so many narrow and wide slots give all the pieces, by trying all of them. */
function canCut(
  wanted: Copies,
  [narrow, wide]: readonly number[],
  bands: { readonly narrow: readonly Copies[]; readonly wide: readonly Copies[] },
): boolean {
  const both = [...bands.narrow, ...bands.wide];
  const known = new Map<string, boolean>();
  const search = (left: Copies, narrowLeft: number, wideLeft: number): boolean => {
    if (left.every((count) => count <= 0)) return true;
    const key = `${left.map((count) => Math.max(0, count)).join()} ${narrowLeft} ${wideLeft}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const rest = (band: Copies) => left.map((count, i) => count - band[i]);
    const can =
      (wideLeft > 0 && both.some((band) => search(rest(band), narrowLeft, wideLeft - 1))) ||
      (wideLeft === 0 &&
        narrowLeft > 0 &&
        bands.narrow.some((band) => search(rest(band), narrowLeft - 1, wideLeft)));
    known.set(key, can);
    return can;
  };
  return search(wanted, narrow, wide);
}

describe('whole bands in their places', () => {
  it('are found just where trying all bands in all slots finds some', async () => {
    const seen = { found: 0, none: 0, wider: 0, exact: 0 };
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(fc.integer({ min: 26, max: 49 }), { minLength: 4, maxLength: 4 }),
        fc.array(fc.integer({ min: 3, max: 11 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 4, max: 9 }),
        fc.nat(),
        async (lengths, quantities, wideSlots, seed) => {
          const plan = await planOfTwoSlots(lengths, quantities, wideSlots, seed);
          if (plan === undefined) return;
          const { ground, book, bands, slots, duals, room } = plan;
          // No plan has a band that loses more than there is room for.
          const places = bandPlaces(book, slots, duals, room + 1e-6);
          // A slot that no band is worth lying in, as small offcuts have.
          const idle = { slots: [...slots, 1], duals: { ...duals, slots: [...duals.slots, 0] } };
          const numbers = await fillPlaces(ground, { places, ...idle, room, nodes: NODES });
          if (duals.pieces.some((worth) => worth > room + 1e-6)) seen.exact++;
          if (numbers === 'stopped') throw new Error('so few places are tried whole');
          if (numbers === 'infeasible') {
            expect(canCut(quantities, slots, bands)).toBe(false);
            seen.none++;
            return;
          }
          const left = [...quantities];
          const used = [0, 0];
          places.forEach(({ slot, copies, band }, place) => {
            used[slot] += numbers[place];
            if (slot !== book.bands[band].slot) seen.wider += numbers[place];
            for (const [i, count] of copies) left[i] -= count * numbers[place];
          });
          expect(used[0]).toBeLessThanOrEqual(slots[0]);
          expect(used[1]).toBeLessThanOrEqual(slots[1]);
          expect(left.every((count) => count <= 0)).toBe(true);
          seen.found++;
        },
      ),
      { numRuns: 600 },
    );
    expect(seen.found).toBeGreaterThan(50);
    expect(seen.none).toBeGreaterThan(5);
    expect(seen.wider).toBeGreaterThan(20);
    expect(seen.exact).toBeGreaterThan(50);
  });
});
