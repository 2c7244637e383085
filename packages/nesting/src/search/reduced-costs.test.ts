import { describe, expect, it } from 'vitest';
import { BandBook } from '../master/band-book.js';
import { jointCosts, reducedCosts } from './reduced-costs.js';

const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
const lay = { piece: 0, turned: false, length: 10, width: 2 };
const box = { length: 20, width: 10, firstCuts: ['along'] as const, lays: [lay] };

/** Two slots, 2 and 3 wide; a band of two pieces in each; a sheet of each, one of them not used up. */
function bookOfTwo() {
  const book = new BandBook([box], limits);
  const piece = { extent: 10, part: { kind: 'lay', piece: 0, turned: false } as const };
  const part = { kind: 'split', cuts: 'across', parts: [piece, piece] } as const;
  for (const extent of [2, 3]) {
    book.addBand({ box: 0, cuts: 'along', extent, part });
    book.addList({ bands: [], sheets: [{ box: 0, cuts: 'along', extents: [[extent, 3]] }] });
  }
  return book;
}

describe('reduced costs', () => {
  it('takes bands and sheets by themselves, or with what they cannot do without', () => {
    const book = bookOfTwo();
    // A sheet costs 12; a slot 2 wide is worth 4, one 3 wide 3; a piece 2.
    const duals = { pieces: [2], classes: [12], caps: [], slots: [4, 3] };
    const alone = reducedCosts(book, duals, (_, copies) => copies);
    expect(alone).toEqual({ sheets: [12 - 12, 12 - 9], bands: [4 - 4, 3 - 4] });
    // The narrow band may lie in the wide slot, at a loss of nothing: 0 beyond its own.
    expect(jointCosts(book, duals)).toEqual({ bands: [0 + 0, -1 + 3], sheets: [0, 3 + 3 * -1] });
  });
});
