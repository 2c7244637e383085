import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { leastCost, loadHighs } from './least-cost.test.support.js';
import type {
  CuttingProblem,
  KeepRule,
  Offcut,
  Piece,
  Shear,
  Sheet,
  Stages,
  Stock,
} from './problem.js';

// Each case is worked by hand from what `Shear`, `Cut`, `KeepRule` and `Sheet` say.

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

type Size = readonly [length: number, width: number];

function piece([length, width]: Size, quantity: number, more: Partial<Piece> = {}): Piece {
  return { id: `${length} x ${width}`, length, width, quantity, mayTurn: false, ...more };
}

function sheet([length, width]: Size, more: Partial<Sheet> = {}): Sheet {
  const bought = { price: 10, onHand: 0, canBuy: 'any' } as const;
  return { kind: 'sheet', id: `sheet ${length} x ${width}`, length, width, ...bought, ...more };
}

function offcut([length, width]: Size, more: Partial<Offcut> = {}): Offcut {
  return { kind: 'offcut', id: `offcut ${length} x ${width}`, length, width, ...more };
}

function cost(
  pieces: readonly Piece[],
  stock: readonly Stock[],
  shear: Partial<Shear> = {},
  keep: readonly KeepRule[] = [],
): number | 'cannot be cut' {
  const problem: CuttingProblem = { pieces, stock, shear: { firstCut: 'either', ...shear }, keep };
  return leastCost(highs, problem);
}

describe('the least cost of small problems worked by hand: the machine', () => {
  it('lets a kerf fit exactly between two pieces, and none wider', () => {
    const pieces = [piece([3, 3], 2)];
    expect(cost(pieces, [sheet([7, 3])], { kerf: 1 })).toBe(10);
    expect(cost(pieces, [sheet([7, 3])], { kerf: 2 })).toBe(20);
  });

  it('lets the last kerf run off the edge, which leaves no strip to be too narrow', () => {
    const wide = { narrowestStrip: 3 };
    const twoFrom = (length: number, shear: Partial<Shear>) =>
      cost([piece([3, 3], 2)], [sheet([length, 3])], shear);
    // 3 + kerf + 3 + a rest of 1, all dust for a kerf of 2.
    expect(twoFrom(9, { kerf: 2, ...wide })).toBe(10);
    // 3 + kerf + 3 + kerf + a sliver of 1.
    expect(twoFrom(9, { kerf: 1, firstCut: 'along' })).toBe(10);
    expect(twoFrom(9, { kerf: 1, firstCut: 'along', ...wide })).toBe(20);
    // Across first there is a last trim: strips of 4 lose one kerf more each.
    expect(twoFrom(9, { kerf: 1, firstCut: 'across', ...wide })).toBe(10);
    expect(twoFrom(9, { kerf: 1, firstCut: 'along', stages: 3, ...wide })).toBe(10);
    expect(twoFrom(10, { kerf: 1, firstCut: 'along', ...wide })).toBe(20);
    expect(twoFrom(11, { kerf: 1, firstCut: 'along', ...wide })).toBe(10);
  });

  it('takes off one kerf after another only where any cut may follow any', () => {
    // Of a width of 7 the piece of 4 leaves 2 beyond the kerf: too narrow, unless shaved from 7
    // to 6, 5 and 4.
    const shaved = (stages: Stages) =>
      cost([piece([3, 4], 1)], [sheet([9, 7])], { kerf: 1, narrowestStrip: 3, stages });
    expect(shaved('free')).toBe(10);
    expect(shaved(3)).toBe('cannot be cut');
    expect(shaved(2)).toBe('cannot be cut');
  });

  it('parts no strip narrower than the narrowest, whether piece, remnant or trim', () => {
    expect(cost([piece([6, 3], 1)], [sheet([7, 3])], { narrowestStrip: 1 })).toBe(10);
    expect(cost([piece([6, 3], 1)], [sheet([7, 3])], { narrowestStrip: 2 })).toBe('cannot be cut');
    expect(cost([piece([1, 3], 1)], [sheet([7, 3])], { narrowestStrip: 2 })).toBe('cannot be cut');
    // Nothing has to be parted to get at a narrow piece that is a whole offcut.
    expect(cost([piece([1, 3], 1)], [offcut([1, 3])], { narrowestStrip: 2 })).toBe(0);
  });

  it('shears a strip wider than all its pieces where the trim would be too narrow else', () => {
    // In a strip of 4 the piece of 3 would leave 1; in one of 6 they leave 2 and 3.
    const pieces = [piece([5, 4], 1), piece([5, 3], 1), piece([10, 2], 1)];
    const shear = { narrowestStrip: 2, firstCut: 'along' } as const;
    expect(cost(pieces, [sheet([10, 8])], shear)).toBe(10);
    expect(cost(pieces, [sheet([10, 7])], shear)).toBe(20);
    expect(cost(pieces, [sheet([10, 6])], { firstCut: 'along' })).toBe(10);
  });

  it('makes no cut longer than the longest, in the order in which cuts shorten the metal', () => {
    const pieces = [piece([5, 3], 4)];
    const stock = [sheet([10, 6])];
    expect(cost(pieces, stock, { longestCut: 10 })).toBe(10);
    // Across first: 6 long, and then along what is 5 long.
    expect(cost(pieces, stock, { longestCut: 6 })).toBe(10);
    expect(cost(pieces, stock, { longestCut: 5 })).toBe('cannot be cut');
  });

  it('takes the whole breadth as one strip where no cut of the first stage can be made', () => {
    const pieces = [piece([5, 3], 4)];
    // Along first is 10 long. One strip of breadth 6 is cut to two lengths of 5, each trimmed to
    // one piece of 3; what the trim takes off is as large as a piece and still none.
    expect(cost(pieces, [sheet([10, 6])], { longestCut: 6, firstCut: 'along' })).toBe(20);
    expect(cost(pieces, [sheet([10, 6])], { longestCut: 10, firstCut: 'along' })).toBe(10);
  });

  it('trims all edges of sheets and none of offcuts, by cuts that the shear must be able to make', () => {
    const pieces = [piece([5, 4], 2)];
    expect(cost(pieces, [sheet([12, 6])], { trim: 1 })).toBe(10);
    expect(cost(pieces, [sheet([11, 6])], { trim: 1 })).toBe(20);
    expect(cost(pieces, [sheet([12, 5])], { trim: 1 })).toBe('cannot be cut');
    expect(cost(pieces, [offcut([10, 4])], { trim: 1 })).toBe(0);
    // The ends are 6 long; then the sides are 10 long.
    expect(cost(pieces, [sheet([12, 6])], { trim: 1, longestCut: 10 })).toBe(10);
    expect(cost(pieces, [sheet([12, 6])], { trim: 1, longestCut: 9 })).toBe('cannot be cut');
    expect(cost(pieces, [sheet([12, 6])], { trim: 1, narrowestStrip: 4 })).toBe(10);
    expect(cost([piece([1, 18], 1)], [sheet([3, 20])], { trim: 1, longestCut: 19 })).toBe(
      'cannot be cut',
    );
  });

  it('gets more out of a sheet by a third stage, and more yet by a fourth', () => {
    // A band of its own, and beside the large one a stack of two.
    const three = [piece([6, 2], 1), piece([3, 4], 1), piece([3, 2], 2)];
    expect(cost(three, [sheet([6, 6])], { stages: 2 })).toBe(20);
    expect(cost(three, [sheet([6, 6])], { stages: 3 })).toBe(10);
    // The same again beside a piece that is as wide as the sheet.
    const four = [...three, piece([3, 6], 1)];
    expect(cost(four, [sheet([9, 6])], { stages: 3 })).toBe(20);
    expect(cost(four, [sheet([9, 6])], { stages: 'free' })).toBe(10);
    expect(cost(four, [sheet([9, 6])], { stages: 'free', firstCut: 'across' })).toBe(10);
    // One strip of the whole breadth needs no first cut, so the direction of that binds nothing.
    expect(cost(four, [sheet([9, 6])], { stages: 'free', firstCut: 'along' })).toBe(10);
  });

  it('does not cut a pinwheel, which no guillotine can', () => {
    const pinwheel = [piece([3, 2], 4, { mayTurn: true }), piece([1, 1], 1)];
    expect(cost(pinwheel, [sheet([5, 5])], { stages: 'free' })).toBe(20);
  });

  it('turns a piece only where it may', () => {
    expect(cost([piece([4, 6], 1)], [sheet([6, 4])], { stages: 'free' })).toBe('cannot be cut');
    expect(cost([piece([4, 6], 1, { mayTurn: true })], [sheet([6, 4])])).toBe(10);
  });
});

describe('the least cost of small problems worked by hand: the stock', () => {
  it('keeps metals and thicknesses apart', () => {
    const thin = { metal: 'tinplate', thickness: 0.3 };
    const thick = { metal: 'tinplate', thickness: 0.4 };
    const stock = [sheet([6, 4], { ...thin, price: 7 }), sheet([6, 5], { ...thick, price: 11 })];
    expect(cost([piece([3, 4], 1, thin), piece([2, 4], 1, thick)], stock)).toBe(18);
    expect(cost([piece([3, 4], 1)], stock)).toBe('cannot be cut');
  });

  it('lays the rolling direction of a piece along that of the stock', () => {
    const along = sheet([6, 6], { rolling: 'along' });
    const unknown = sheet([6, 6]);
    const fits = (stock: Sheet, size: Size, more: Partial<Piece>) =>
      cost([piece(size, 2, more)], [stock]);
    expect(fits(along, [6, 3], { rolling: 'along' })).toBe(10);
    expect(fits(along, [6, 3], { rolling: 'across' })).toBe('cannot be cut');
    expect(fits(along, [6, 3], { rolling: 'across', mayTurn: true })).toBe(10);
    expect(fits(unknown, [6, 3], { rolling: 'along', mayTurn: true })).toBe('cannot be cut');
    expect(fits(unknown, [6, 3], {})).toBe(10);
  });

  it('uses sheets on hand before it buys, and no more than there are', () => {
    const stock = (more: Partial<Sheet>) => [sheet([6, 4], more)];
    const two = [piece([4, 4], 2)];
    expect(cost(two, stock({ onHand: 1, bookValue: 30 }))).toBe(40);
    expect(cost([piece([4, 4], 1)], stock({ onHand: 1, bookValue: 30 }))).toBe(30);
    expect(cost(two, stock({ onHand: 2 }))).toBe(0);
    expect(cost(two, stock({ onHand: 1, canBuy: 0 }))).toBe('cannot be cut');
    expect(cost(two, [...stock({ onHand: 1, canBuy: 0 }), offcut([5, 5])])).toBe(0);
    expect(
      cost(two, [sheet([6, 4], { onHand: 1, canBuy: 0 }), offcut([4, 4], { bookValue: 3 })]),
    ).toBe(3);
    expect(cost(two, [offcut([4, 4])])).toBe('cannot be cut');
  });

  it('buys whole packs', () => {
    const three = [piece([4, 4], 3)];
    expect(cost(three, [sheet([6, 4], { packSize: 2 })])).toBe(40);
    expect(cost(three, [sheet([6, 4], { packSize: 2, onHand: 1 })])).toBe(20);
    expect(cost(three, [sheet([6, 4], { packSize: 2, canBuy: 3 })])).toBe('cannot be cut');
    // The dearer sheet by the piece is cheaper than half a pack in vain.
    expect(cost(three, [sheet([6, 4], { packSize: 5 }), sheet([5, 4], { price: 13 })])).toBe(39);
  });
});

describe('the least cost of small problems worked by hand: offcuts worth keeping', () => {
  const rule = { leastLength: 3, leastWidth: 3, coinsPerMillion: 1_000_000, trouble: 2 };
  const large = sheet([10, 4], { price: 50 });

  it('values a remnant by its area less the trouble, if it is large enough', () => {
    // 6 x 4 is left: 24 - 2.
    expect(cost([piece([4, 4], 1)], [large], {}, [rule])).toBe(28);
    // Too short, or too narrow.
    expect(cost([piece([4, 4], 1)], [large], {}, [{ ...rule, leastLength: 7 }])).toBe(50);
    expect(cost([piece([4, 4], 1)], [large], {}, [{ ...rule, leastWidth: 5 }])).toBe(50);
    // A kerf of 1 leaves 5 x 4; 28 square ticks at 0.750001 come to 21 whole coins.
    expect(cost([piece([4, 4], 1)], [large], { kerf: 1 }, [rule])).toBe(32);
    expect(cost([piece([3, 4], 1)], [large], {}, [{ ...rule, coinsPerMillion: 750_001 }])).toBe(31);
    expect(cost([piece([4, 4], 1)], [large], {}, [{ ...rule, metal: 'brass' }])).toBe(50);
    // The last trim of the second length frees a piece of 1 and leaves 5 x 3: 15 - 2.
    const pair = [piece([5, 4], 1), piece([5, 1], 1)];
    expect(cost(pair, [large], { firstCut: 'along' }, [rule])).toBe(37);
  });

  it('finds one large remnant worth more than two small ones', () => {
    // Two 5 x 2: in one strip of 2 they leave 10 x 2, too narrow; in one column of 5, 5 x 4.
    expect(cost([piece([5, 2], 2)], [large], {}, [rule])).toBe(32);
    expect(cost([piece([5, 2], 2)], [large], { firstCut: 'along' }, [rule])).toBe(50);
    expect(cost([piece([5, 2], 2)], [large], {}, [{ ...rule, leastWidth: 2 }])).toBe(32);
    // One 5 x 2 leaves two remnants, 20 and 10 large; the smaller is not worth a trouble of 12.
    const troubled = { ...rule, leastWidth: 2, trouble: 12 };
    expect(cost([piece([5, 2], 1)], [large], {}, [troubled])).toBe(42);
    expect(cost([piece([5, 2], 1)], [large], {}, [{ ...troubled, trouble: 1 }])).toBe(22);
  });

  it('reckons with what is left of a pack and with the value of stock in the shop', () => {
    // 38 is what a whole one is worth in the rack.
    const packed = [sheet([10, 4], { price: 50, packSize: 3 })];
    expect(cost([piece([10, 4], 1)], packed, {}, [rule])).toBe(150 - 76);
    expect(cost([piece([10, 4], 1)], [offcut([10, 4])], {}, [rule])).toBe(38);
    expect(cost([piece([4, 4], 1)], [offcut([10, 4])], {}, [rule])).toBe(38 - 22);
  });

  it('never pays for spares', () => {
    const spare = piece([4, 4], 1, { spares: 2 });
    expect(cost([spare], [large], {}, [rule])).toBe(28);
    expect(cost([{ ...spare, quantity: 0 }], [large], {}, [rule])).toBe(0);
  });
});
