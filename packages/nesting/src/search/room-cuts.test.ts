import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';
import { RoomCuts } from './room-cuts.js';

const { ground, start } = groundOf({
  pieces: [piece('a', 37, 5, 9), piece('b', 29, 4, 14), piece('c', 18, 7, 11)],
  stock: [sheet('s', 90, 30, { price: 7 }), sheet('t', 60, 25, { price: 4 })],
  shear: { firstCut: 'either' },
});
for (const { pattern } of start ?? []) ground.book.addPattern(pattern);
const { book } = ground;

const slotNumbers = fc.array(fc.nat(9), {
  minLength: book.slots.length,
  maxLength: book.slots.length,
});
const sheetNumbers = fc.array(fc.nat(9), {
  minLength: book.sheets.length,
  maxLength: book.sheets.length,
});
const someCuts = fc.array(
  fc.record({ room: fc.integer({ min: -9, max: 9 }), worth: slotNumbers, slots: slotNumbers }),
  { minLength: 1, maxLength: 300 },
);

/** What a cut says of sheets, by its slots. */
function said(
  { room, worth, slots }: { room: number; worth: number[]; slots: number[] },
  sheets: readonly number[],
): number {
  const there = book.slots.map((_, slot) =>
    book.sheets.reduce((sum, { slots: own }, s) => {
      const copies = own.find(([at]) => at === slot)?.[1] ?? 0;
      return sum + copies * sheets[s];
    }, 0),
  );
  return there.reduce((sum, count, slot) => sum + worth[slot] * (count - slots[slot]), room);
}

describe('RoomCuts', () => {
  it('say of any sheets what their slots say, however many there are, and after old ones are gone', () => {
    fc.assert(
      fc.property(someCuts, sheetNumbers, fc.integer({ min: 1, max: 300 }), (all, sheets, most) => {
        const cuts = new RoomCuts(book);
        for (const cut of all) cuts.add(cut, cut.slots);
        expect(cuts.count).toBe(all.length);
        all.forEach((cut, index) => {
          expect(cuts.mostBy(index, sheets)).toBeCloseTo(said(cut, sheets), 6);
        });
        cuts.keepLast(most);
        const kept = all.slice(-most);
        expect(cuts.count).toBe(kept.length);
        kept.forEach((cut, index) => {
          expect(cuts.mostBy(index, sheets)).toBeCloseTo(said(cut, sheets), 6);
        });
      }),
      { numRuns: 40 },
    );
  });
});
