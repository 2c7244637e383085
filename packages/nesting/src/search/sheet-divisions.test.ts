import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandBook } from '../master/band-book.js';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';
import { bestDivisions, likelyDivisions } from './sheet-divisions.js';

const drawn = fc.record({
  extents: fc.uniqueArray(fc.integer({ min: 2, max: 9 }), { minLength: 1, maxLength: 4 }),
  values: fc.array(fc.nat(20), { minLength: 4, maxLength: 4 }),
  needed: fc.array(fc.nat(3), { minLength: 4, maxLength: 4 }),
  breadth: fc.integer({ min: 9, max: 24 }),
  price: fc.nat(40),
  narrowest: fc.constantFrom(1, 1, 3),
});

/** A sheet 30 long whose first cuts run along it, and slots of the extents. */
function faceOf({
  extents,
  values,
  breadth,
  narrowest,
}: typeof drawn extends fc.Arbitrary<infer T> ? T : never) {
  const { ground } = groundOf({
    // The last can be cut whatever must not be parted.
    pieces: [...extents, breadth].map((extent, i) => piece(`p${i}`, 30, extent, 1)),
    stock: [sheet('s', 30, breadth)],
    shear: { firstCut: 'along', narrowestStrip: narrowest },
  });
  const { book } = ground;
  const slots = extents.map((extent) => book.slot(0, 'along', extent));
  const duals: number[] = [];
  slots.forEach((slot, i) => {
    duals[slot] = values[i];
  });
  return { ground, book, slots, duals };
}

/** All divisions into at most so many of each, and what they are worth, tried one by one. */
function everyDivision(
  book: BandBook,
  slots: readonly number[],
  most: readonly number[],
  breadth: number,
  narrowest: number,
  duals: readonly number[],
): { counts: number[]; worth: number; room: number }[] {
  const found: { counts: number[]; worth: number; room: number }[] = [];
  const visit = (index: number, room: number, counts: number[], worth: number): void => {
    if (index === slots.length) {
      const used = counts.some((count) => count > 0);
      if (used && (room === 0 || room >= narrowest)) found.push({ counts, worth, room });
      return;
    }
    const { extent } = book.slots[slots[index]];
    const usable = extent >= narrowest || extent === breadth;
    for (let count = 0; count <= (usable ? most[index] : 0) && count * extent <= room; count++) {
      visit(
        index + 1,
        room - count * extent,
        [...counts, count],
        worth + count * duals[slots[index]],
      );
    }
  };
  visit(0, breadth, [], 0);
  return found;
}

describe('divisions of a sheet into slots', () => {
  it('are the best there are at the duals of the slots', () => {
    let gained = 0;
    fc.assert(
      fc.property(drawn, (face) => {
        const { ground, book, slots, duals } = faceOf(face);
        const answer = { pieces: [], classes: [face.price], caps: [], slots: duals };
        const needed: number[] = [];
        slots.forEach((slot, i) => {
          needed[slot] = face.needed[i];
        });
        const most = slots.map((_, i) => face.needed[i] + 2);
        const all = everyDivision(book, slots, most, face.breadth, face.narrowest, duals);
        const best = Math.max(0, ...all.map(({ worth }) => worth));
        const [division] = bestDivisions(ground, book, answer, needed);
        if (best <= face.price) {
          expect(division).toBeUndefined();
          return;
        }
        gained++;
        const worth = division.slots.reduce((sum, [slot, count]) => sum + count * duals[slot], 0);
        expect(worth).toBe(best);
        const filled = division.slots.reduce(
          (sum, [slot, count]) => sum + count * book.slots[slot].extent,
          0,
        );
        const rest = face.breadth - filled;
        expect(rest === 0 || rest >= face.narrowest).toBe(true);
      }),
    );
    expect(gained).toBeGreaterThan(20);
  });

  it('that fall short by no more than a gap are all listed, if they are few enough', () => {
    fc.assert(
      fc.property(drawn, fc.nat(15), (drawnFace, gap) => {
        const face = { ...drawnFace, narrowest: 1 as const };
        const { ground, book, slots, duals } = faceOf(face);
        const answer = { pieces: [], classes: [face.price], caps: [], slots: duals };
        const listed = likelyDivisions(ground, book, answer, [], gap + 0.5, 10_000);
        const positive = slots.filter((slot) => duals[slot] > 0);
        const most = positive.map(() => 2);
        const expected = everyDivision(book, positive, most, face.breadth, 1, duals).filter(
          ({ worth, counts, room }) =>
            worth >= face.price - gap &&
            counts.every((count, i) => count === 2 || book.slots[positive[i]].extent > room),
        );
        const key = (counts: readonly number[]) => counts.join(' ');
        const keys = listed.map((division) =>
          key(positive.map((slot) => division.slots.find(([at]) => at === slot)?.[1] ?? 0)),
        );
        expect(keys.sort()).toEqual(expected.map(({ counts }) => key(counts)).sort());
      }),
    );
  });
});
