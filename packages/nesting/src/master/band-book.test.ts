import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCase } from '../box-solver/random-box.test.support.js';
import type { Pattern } from '../pattern/part.js';
import { patternKey } from '../pattern/pattern-key.js';
import { compose } from '../search/compose.js';
import { ThreeStagePricer } from '../three-stage/three-stage-pricer.js';
import { BandBook } from './band-book.js';

describe('BandBook', () => {
  it('gives every pattern back that it took in, whole amounts and broken ones', () => {
    const drawn = boxCase({ narrowest: true });
    const amount = fc.oneof(
      fc.integer({ min: 1, max: 9 }),
      fc.double({ min: 0.01, max: 9, noNaN: true }),
    );
    let taken = 0;
    fc.assert(
      fc.property(drawn, drawn, amount, ({ box, limits, values }, other, amount) => {
        const boxes = [box, { ...other.box, lays: box.lays }];
        const book = new BandBook(boxes, limits);
        const priced = new ThreeStagePricer(boxes, limits, [undefined, undefined]).price(values, 0);
        const patterns = boxes.flatMap((_, b) => priced.patterns(b).map(({ pattern }) => pattern));
        for (const pattern of patterns) {
          const { sheet, bands } = book.addPattern(pattern);
          const before = [book.slots.length, book.bands.length, book.sheets.length];
          expect(book.addPattern(pattern)).toEqual({ sheet, bands });
          expect([book.slots.length, book.bands.length, book.sheets.length]).toEqual(before);
          const amounts = book.bands.map(
            (_, b) => amount * bands.filter((each) => each === b).length,
          );
          const sheets = book.sheets.map((_, s) => (s === sheet ? amount : 0));
          const back = compose(book, { sheets, bands: amounts });
          expect(back.map(([each]) => patternKey(each))).toEqual([patternKey(pattern)]);
          expect(back[0][0].counts).toEqual(pattern.counts);
          expect(back[0][1]).toBeCloseTo(amount, 9);
          taken++;
        }
      }),
      { numRuns: 300 },
    );
    expect(taken).toBeGreaterThan(200);
  });

  const lays = [{ piece: 0, turned: false, length: 6, width: 4 }];
  const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
  const both = ['along', 'across'] as const;

  it('shares slots between boxes whose bands are alike, whichever way they run', () => {
    const one = { length: 30, width: 20, firstCuts: both, lays };
    const wider = { length: 30, width: 25, firstCuts: both, lays };
    const book = new BandBook([one, wider], limits);
    expect(book.slot(0, 'along', 4)).toBe(book.slot(1, 'along', 4));
    expect(book.slot(0, 'across', 6)).not.toBe(book.slot(1, 'across', 6));
    // A piece that may turn lies in a band of the same length either way.
    const turning = [...lays, { piece: 0, turned: true, length: 4, width: 6 }];
    const square = { length: 30, width: 30, firstCuts: both, lays: turning };
    const turned = new BandBook([square], limits);
    expect(turned.slot(0, 'along', 4)).toBe(turned.slot(0, 'across', 4));
    const fixed = new BandBook([{ ...square, lays }], limits);
    expect(fixed.slot(0, 'along', 4)).not.toBe(fixed.slot(0, 'across', 4));
  });

  it('adopts patterns of another book over the same boxes, slot by slot', () => {
    const boxes = [{ length: 30, width: 20, firstCuts: both, lays }];
    const [one, other] = [new BandBook(boxes, limits), new BandBook(boxes, limits)];
    const part = { kind: 'lay', piece: 0, turned: false } as const;
    // The other book knows another slot already, so that the numbers of slots differ.
    other.slot(0, 'across', 6);
    const band = one.addBand({ box: 0, cuts: 'along', extent: 4, part });
    const wide = one.addBand({ box: 0, cuts: 'along', extent: 7, part });
    const slots = [4, 7].map((extent) => [one.slot(0, 'along', extent), 1] as const);
    const sheet = one.addSheet({ box: 0, cuts: 'along', slots, kept: 0 });
    other.adopt(one, [band, wide], [sheet]);
    other.adopt(one, [band], [sheet]);
    expect(other.bands.map(({ slot }) => other.slots[slot].extent)).toEqual([4, 7]);
    expect(other.sheets).toHaveLength(1);
    expect(other.sheets[0].slots.map(([slot, n]) => [other.slots[slot].extent, n])).toEqual([
      [4, 1],
      [7, 1],
    ]);
    expect(other.slotsOf(0, 'along').map((slot) => other.slots[slot].extent)).toEqual([4, 7]);
    expect(other.slotsOf(0, 'across').map((slot) => other.slots[slot].extent)).toEqual([6]);
  });

  it('keeps a band apart where it is the whole box, since no first cut can be made', () => {
    const boxes = [20, 25].map((width) => ({ length: 30, width, firstCuts: both, lays }));
    const book = new BandBook(boxes, { ...limits, longestCut: 29 });
    expect(book.slot(0, 'along', 20)).not.toBe(book.slot(1, 'along', 20));
    expect(() =>
      new BandBook([{ ...boxes[0], firstCuts: ['along'] }], limits).slot(0, 'across', 4),
    ).toThrow('never run across');
  });

  it('lets a narrower band lie in a wider slot only where what is left may be any sliver', () => {
    const box = { length: 30, width: 20, firstCuts: both, lays };
    const book = new BandBook([box], limits);
    const [narrow, wide, square] = [
      book.slot(0, 'along', 4),
      book.slot(0, 'along', 5),
      book.slot(0, 'across', 6),
    ];
    expect(book.mayLieIn(narrow, wide)).toBe(true);
    expect(book.mayLieIn(wide, narrow)).toBe(false);
    expect(book.mayLieIn(narrow, narrow)).toBe(false);
    expect(book.mayLieIn(narrow, square)).toBe(false);
    const strict = new BandBook([box], { ...limits, narrowest: 2 });
    expect(strict.mayLieIn(strict.slot(0, 'along', 4), strict.slot(0, 'along', 9))).toBe(false);
  });

  it('parts what a pattern keeps into that of its bands and that of the rest', () => {
    const box = { length: 30, width: 20, firstCuts: both, lays };
    const book = new BandBook([box], limits, (_, length, extent) => length - extent);
    const band = {
      extent: 4,
      part: {
        kind: 'split',
        cuts: 'across',
        parts: [{ extent: 6, part: { kind: 'lay', piece: 0, turned: false } }],
      },
    } as const;
    const pattern: Pattern = {
      stockClass: 0,
      part: { kind: 'split', cuts: 'along', parts: [band, band] },
      counts: [[0, 2]],
      kept: 60,
    };
    const { sheet, bands } = book.addPattern(pattern);
    expect(bands.map((b) => book.bands[b].kept)).toEqual([26, 26]);
    expect(book.sheets[sheet].kept).toBe(8);
    expect(compose(book, { sheets: [1], bands: [2] })[0][0].kept).toBe(60);
  });
});
