import type { CuttingProblem, Offcut, Piece, Stock } from '@stripwright/nesting';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseCandidates } from './candidates.js';
import { canHold, laysOf } from './lays.js';

const SHEET: Stock = {
  kind: 'sheet',
  id: 'Sheet',
  length: 560,
  width: 400,
  price: 740,
  onHand: 0,
  canBuy: 'any',
};

const piece = (id: string, length: number, width: number, quantity: number): Piece => ({
  id,
  length,
  width,
  quantity,
  mayTurn: true,
});

const problemOf = (...pieces: readonly Piece[]): CuttingProblem => ({
  pieces,
  stock: [SHEET],
  shear: { firstCut: 'either' },
});

const offcut = (length: number, width: number, bookValue?: number): Offcut => ({
  kind: 'offcut',
  id: `${length} x ${width}`,
  length,
  width,
  ...(bookValue === undefined ? {} : { bookValue }),
});

const heart = piece('Heart', 300, 40, 10);
const lid = piece('Lid', 120, 100, 4);

describe('of a rack, are considered', () => {
  test('all that fit, where they are few', () => {
    const offered = [offcut(290, 30), offcut(300, 40), offcut(40, 20), offcut(100, 120)];
    const choice = chooseCandidates(problemOf(heart, lid), offered, 2);
    expect(choice).toEqual({ fitting: 2, chosen: [1, 3] });
  });

  test('those that save most metal, one blank with another', () => {
    // Of ten hearts two, four, one; of four lids one.
    const offered = [offcut(300, 80), offcut(600, 80), offcut(300, 50), offcut(125, 105)];
    const { fitting, chosen } = chooseCandidates(problemOf(heart, lid), offered, 2);
    expect(fitting).toBe(4);
    expect(chosen).toEqual([1, 3]);
  });

  test('not those that stand in the books for more than they save', () => {
    // Three hearts are 36,000 square ticks of a sheet at 740 for 224,000: 118.9.
    const dear = [offcut(300, 120, 119), offcut(300, 80, 0)];
    expect(chooseCandidates(problemOf(heart), dear, 1).chosen).toEqual([1]);
    // Two hearts save 79.3, three with 39 in the books 79.9.
    const fair = [offcut(300, 120, 39), offcut(300, 80, 0)];
    expect(chooseCandidates(problemOf(heart), fair, 1).chosen).toEqual([0]);
  });

  test('in full those that keep most of their value, where a rule gives what is kept a worth', () => {
    const keep = [{ leastLength: 100, leastWidth: 100, coinsPerMillion: 2000 }];
    const problem = { ...problemOf(piece('Heart', 300, 40, 1)), keep };
    // Of 300 x 300 a part of 300 x 260 is kept, of 300 x 120 nothing is: 80 wide is scrap.
    const offered = [offcut(300, 120), offcut(300, 300)];
    expect(chooseCandidates(problem, offered, 1).chosen).toEqual([1]);
  });

  test('no more of one than its demand, and by turns those that waste least', () => {
    // Any large one holds all ten hearts; then comes what is filled best.
    const offered = [offcut(340, 440), offcut(340, 430), offcut(330, 420), offcut(300, 40)];
    expect(chooseCandidates(problemOf(heart), offered, 2).chosen).toContain(3);
  });

  test('at least one for each blank, however unlike their demands', () => {
    const many = piece('Heart', 300, 40, 10_000);
    const offered = [...Array.from({ length: 50 }, () => offcut(300, 90)), offcut(120, 100)];
    const { chosen } = chooseCandidates(problemOf(many, piece('Lid', 120, 100, 1)), offered, 10);
    expect(chosen).toContain(50);
    expect(chosen).toHaveLength(10);
  });

  test('the oldest of equals', () => {
    const offered = Array.from({ length: 9 }, () => offcut(310, 90));
    expect(chooseCandidates(problemOf(heart), offered, 3).chosen).toEqual([0, 1, 2]);
  });

  test('sheets of which some lie there, by all that they hold', () => {
    const pile: Stock = { ...SHEET, id: 'Pile', length: 310, width: 45, onHand: 8, canBuy: 0 };
    const offered = [offcut(310, 90), pile];
    expect(chooseCandidates(problemOf(heart), offered, 1).chosen).toEqual([1]);
    expect(
      chooseCandidates(problemOf(heart), [offered[0] ?? pile, { ...pile, onHand: 1 }], 1),
    ).toEqual({ fitting: 2, chosen: [0] });
  });
});

const side = fc.integer({ min: 10, max: 400 });
const anyPieces = fc.array(fc.tuple(side, side, fc.integer({ min: 1, max: 30 })), {
  minLength: 1,
  maxLength: 5,
});
const anyOffers = fc.array(
  fc.tuple(side, side, fc.option(fc.integer({ min: 0, max: 900 }), { nil: undefined })),
  { maxLength: 60 },
);

test('whatever the rack: no more than allowed, each fits, and every blank that can be has one', () => {
  fc.assert(
    fc.property(anyPieces, anyOffers, fc.integer({ min: 5, max: 12 }), (sizes, offers, most) => {
      const pieces = sizes.map(([length, width, wanted], index) =>
        piece(`${index}`, length, width, wanted),
      );
      const problem = problemOf(...pieces);
      const offered = offers.map(([length, width, book]) => offcut(length, width, book));
      const holds = (stock: Stock, wanted: Piece) =>
        laysOf(wanted, undefined).some((lay) => canHold(stock, lay, problem.shear));
      const fitting = offered.filter((stock) => pieces.some((wanted) => holds(stock, wanted)));
      const choice = chooseCandidates(problem, offered, most);
      expect(choice.fitting).toBe(fitting.length);
      expect(choice.chosen).toHaveLength(Math.min(most, fitting.length));
      expect([...new Set(choice.chosen)].sort((one, other) => one - other)).toEqual(choice.chosen);
      const chosen = choice.chosen.flatMap((place) => offered[place] ?? []);
      for (const stock of chosen) expect(fitting).toContain(stock);
      for (const wanted of pieces) {
        if (!offered.some((stock) => holds(stock, wanted))) continue;
        expect(chosen.some((stock) => holds(stock, wanted))).toBe(true);
      }
    }),
  );
});

test('the work grows as the rack, and no faster: each is looked at once for each blank', () => {
  const looks = (size: number): number => {
    let count = 0;
    const offered = Array.from(
      { length: size },
      (_, index): Stock => ({
        ...offcut(100 + ((index * 37) % 300), 30 + ((index * 53) % 200)),
        get length() {
          count += 1;
          return 100 + ((index * 37) % 300);
        },
      }),
    );
    chooseCandidates(problemOf(heart, lid, piece('Small', 50, 30, 5)), offered);
    return count;
  };
  const few = looks(1000);
  expect(few).toBeLessThanOrEqual(1000 * 4);
  expect(looks(10_000)).toBe(10 * few);
  expect(looks(100_000)).toBe(100 * few);
});
