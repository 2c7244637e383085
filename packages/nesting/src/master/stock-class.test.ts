import { describe, expect, it } from 'vitest';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem, Shear } from '../problem.js';
import { stockClasses } from './stock-class.js';

const shear: Shear = { firstCut: 'either' };
const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
const square = (length: number, width: number) => length * width;
const classesOf = (problem: CuttingProblem, more: object = {}, keep = square) =>
  stockClasses(problem, { ...limits, ...more }, keep);

describe('stockClasses', () => {
  it('puts stock of one size together: the shop first, the cheapest first', () => {
    const stock = [
      sheet('s', 100, 50, { price: 70, onHand: 3, bookValue: 9 }),
      sheet('t', 100, 50, { price: 60, canBuy: 4 }),
      offcut('A', 100, 50, { bookValue: 5 }),
      sheet('other', 100, 40),
    ];
    const classes = classesOf({ pieces: [piece('a', 10, 10, 1)], stock, shear });
    expect(classes.map(({ box }) => [box.length, box.width])).toEqual([
      [100, 50],
      [100, 40],
    ]);
    expect(classes[0].supplies.map((s) => [s.stock, s.count, s.price, s.bought])).toEqual([
      ['A', 1, 5, false],
      ['s', 3, 9, false],
      ['t', 4, 60, true],
      ['s', Number.POSITIVE_INFINITY, 70, true],
    ]);
    // Of metal an offcut counts half of its area, in thousandths of the largest sheet.
    expect(classes[0].supplies.map(({ charge }) => charge)).toEqual([500, 1000, 1000, 1000]);
    expect(classes[1].supplies.map(({ charge }) => charge)).toEqual([800]);
  });

  it('values what is on hand as the rule values a whole one, unless the books say otherwise', () => {
    const stock = [sheet('s', 10, 5, { onHand: 1 }), offcut('A', 10, 4)];
    const classes = classesOf({ pieces: [piece('a', 1, 1, 1)], stock, shear });
    expect(classes.map(({ supplies }) => supplies[0].price)).toEqual([50, 40]);
  });

  it('counts whole packs, whose sheets are worth something when they are left over', () => {
    const stock = [sheet('s', 10, 5, { packSize: 4, canBuy: 11 })];
    const [entry] = classesOf({ pieces: [piece('a', 1, 1, 1)], stock, shear });
    expect(entry.supplies).toMatchObject([{ count: 8, unit: 4, leftOver: 50, least: 0 }]);
    const single = classesOf({ pieces: [piece('a', 1, 1, 1)], stock: [sheet('s', 10, 5)], shear });
    expect(single[0].supplies).toMatchObject([{ unit: 1, leftOver: 0 }]);
  });

  it('parts what would not cost least if the shop came first', () => {
    const stock = [
      sheet('s', 10, 5, { price: 70, onHand: 3, bookValue: 65 }),
      sheet('t', 10, 5, { price: 60 }),
      offcut('A', 10, 5, { bookValue: 61 }),
      offcut('B', 10, 5),
    ];
    const supplies = (of: readonly (typeof stock)[number][]) =>
      classesOf({ pieces: [piece('a', 1, 1, 1)], stock: of, shear }).map((entry) =>
        entry.supplies.map((supply) => `${supply.stock} ${supply.price}`),
      );
    expect(supplies(stock)).toEqual([['B 50', 'A 61'], ['s 65', 's 70'], ['t 60']]);
    // What is on hand of a size goes before more of that size is bought, whatever it costs.
    expect(supplies([sheet('s', 10, 5, { price: 60, onHand: 1, bookValue: 65 })])).toEqual([
      ['s 65', 's 60'],
    ]);
    // One more of a pack that is paid for anyway costs 50.
    const pack = sheet('p', 10, 5, { price: 55, packSize: 4 });
    expect(supplies([pack, offcut('B', 10, 5)])).toEqual([['B 50', 'p 55']]);
    expect(supplies([pack, offcut('B', 10, 5, { bookValue: 51 })])).toEqual([['B 51'], ['p 55']]);
    expect(supplies([pack, sheet('t', 10, 5, { price: 60 })])).toEqual([['p 55'], ['t 60']]);
  });

  it('trims the edges of sheets, not of offcuts, and adds the kerf to all', () => {
    const stock = [sheet('s', 100, 50), offcut('A', 100, 50)];
    const problem = {
      pieces: [piece('a', 96, 20, 1)],
      stock,
      shear: { ...shear, kerf: 2, trim: 3 },
    };
    const classes = classesOf(problem, { kerf: 2 });
    // 96 + 2 fits 102 and not 96.
    expect(classes.map(({ box }) => [box.length, box.width])).toEqual([[102, 52]]);
    const shorter = { ...problem, pieces: [piece('a', 94, 20, 1)] };
    expect(classesOf(shorter, { kerf: 2 }).map(({ box }) => [box.length, box.width])).toEqual([
      [96, 46],
      [102, 52],
    ]);
  });

  it('leaves out what cannot be trimmed, and of what there is none', () => {
    const trimmed = { ...shear, trim: 3 };
    const stock = [
      sheet('wide', 20, 60),
      sheet('long', 62, 20),
      sheet('fits', 56, 50),
      sheet('none', 30, 30, { canBuy: 0 }),
      sheet('all trim', 40, 6),
    ];
    const problem = { pieces: [piece('a', 9, 9, 1)], stock, shear: trimmed };
    // The ends are cut first, over the whole width; the sides are 6 shorter then.
    const classes = classesOf(problem, { longestCut: 50 });
    expect(classes.flatMap(({ supplies }) => supplies.map((s) => s.stock))).toEqual(['fits']);
  });

  it('leaves out what the shear cannot cut at all, unless a piece is as large', () => {
    const stock = [
      sheet('large', 80, 60),
      sheet('exact', 70, 55),
      sheet('wide', 60, 50),
      sheet('beyond every piece', 10, 5),
    ];
    const pieces = [piece('a', 9, 9, 1), piece('b', 70, 55, 1)];
    const classes = classesOf({ pieces, stock, shear }, { longestCut: 50 });
    const held = classes.map(({ box, supplies }) => [
      supplies[0].stock,
      box.lays.map(({ piece }) => piece),
    ]);
    expect(held).toEqual([
      ['exact', [1]],
      ['wide', [0]],
    ]);
  });

  it('lays a piece as its rolling direction and its right to turn allow', () => {
    const ways = (rolling: object, stockRolling: object, mayTurn: boolean) => {
      const one = piece('a', 9, 4, 1, { ...rolling, mayTurn });
      const stock = [sheet('s', 20, 20, stockRolling)];
      const [held] = classesOf({ pieces: [one], stock, shear });
      const lays = held?.box.lays ?? [];
      return lays.map(({ turned, length, width }) => `${turned} ${length} x ${width}`);
    };
    const [straight, turned] = ['false 9 x 4', 'true 4 x 9'];
    const along = { rolling: 'along' };
    const across = { rolling: 'across' };
    expect(ways({}, {}, true)).toEqual([straight, turned]);
    expect(ways({}, along, false)).toEqual([straight]);
    expect(ways(along, along, true)).toEqual([straight]);
    expect(ways(along, across, true)).toEqual([turned]);
    expect(ways(along, across, false)).toEqual([]);
    expect(ways(across, along, true)).toEqual([turned]);
    expect(ways(across, {}, true)).toEqual([]);
  });

  it('keeps stock apart on which the same piece must lie in other ways', () => {
    const stock = [
      sheet('s', 20, 20, { rolling: 'along' }),
      sheet('t', 20, 20, { rolling: 'across' }),
    ];
    const free = { pieces: [piece('a', 9, 4, 1)], stock, shear };
    expect(classesOf(free)).toHaveLength(1);
    const bound = { ...free, pieces: [piece('a', 9, 4, 1, { rolling: 'along' })] };
    expect(classesOf(bound)).toHaveLength(2);
  });
});
