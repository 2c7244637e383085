import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkProblem } from './check-problem.js';
import type { CuttingProblem, KeepRule, Offcut, Piece, Shear, Sheet } from './problem.js';
import { ProblemError, type ProblemFault } from './problem-error.js';
import { drawnPlan } from './verify/drawn-plan.test.support.js';

const piece: Piece = { id: 'a', length: 5, width: 4, quantity: 1, mayTurn: true };
const sheet: Sheet = {
  kind: 'sheet',
  id: 's',
  length: 100,
  width: 50,
  price: 20,
  onHand: 0,
  canBuy: 'any',
};
const offcut: Offcut = { kind: 'offcut', id: 'o', length: 10, width: 6 };
const rule: KeepRule = { leastLength: 5, leastWidth: 5, coinsPerMillion: 4000 };
const good: CuttingProblem = {
  pieces: [piece],
  stock: [sheet, offcut],
  shear: { firstCut: 'either' },
  keep: [rule],
};

const withPiece = (change: object): CuttingProblem => ({
  ...good,
  pieces: [{ ...piece, ...change }],
});
const withSheet = (change: object): CuttingProblem => ({
  ...good,
  stock: [{ ...sheet, ...change }, offcut],
});
const withOffcut = (change: object): CuttingProblem => ({
  ...good,
  stock: [sheet, { ...offcut, ...change }],
});
const withShear = (change: object): CuttingProblem => ({
  ...good,
  shear: { firstCut: 'either', ...change } as Shear,
});
const withRule = (change: object): CuttingProblem => ({ ...good, keep: [{ ...rule, ...change }] });

function refusal(problem: CuttingProblem): ProblemError {
  try {
    checkProblem(problem);
  } catch (error) {
    if (error instanceof ProblemError) return error;
    throw error;
  }
  throw new Error('the problem was not refused');
}

/** Every field that takes a whole number: its path, how to set it, and the least and most it may be. */
const WHOLE: readonly [string, (value: unknown) => CuttingProblem, least: number, most: number][] =
  [
    ['pieces[0].length', (length) => withPiece({ length }), 1, 200_000],
    ['pieces[0].width', (width) => withPiece({ width }), 1, 200_000],
    ['pieces[0].quantity', (quantity) => withPiece({ quantity }), 1, 1_000_000],
    ['pieces[0].spares', (spares) => withPiece({ spares }), 0, 1_000_000],
    ['stock[0].length', (length) => ({ ...withSheet({ length }), keep: [] }), 1, 200_000],
    ['stock[0].width', (width) => ({ ...withSheet({ width }), keep: [] }), 1, 200_000],
    ['stock[0].price', (price) => ({ ...withSheet({ price }), keep: [] }), 0, 100_000_000],
    ['stock[0].onHand', (onHand) => withSheet({ onHand }), 0, 1_000_000],
    ['stock[0].canBuy', (canBuy) => withSheet({ canBuy }), 0, 1_000_000],
    ['stock[0].packSize', (packSize) => withSheet({ packSize }), 1, 1000],
    ['stock[0].bookValue', (bookValue) => ({ ...withSheet({ bookValue }), keep: [] }), 0, 1e8],
    ['stock[1].length', (length) => withOffcut({ length }), 1, 200_000],
    ['stock[1].bookValue', (bookValue) => withOffcut({ bookValue }), 0, 100_000_000],
    ['shear.longestCut', (longestCut) => withShear({ longestCut }), 1, Number.MAX_SAFE_INTEGER],
    ['shear.narrowestStrip', (narrowestStrip) => withShear({ narrowestStrip }), 0, 200_000],
    ['shear.kerf', (kerf) => withShear({ kerf }), 0, 200_000],
    ['shear.trim', (trim) => ({ ...withShear({ trim }), stock: [offcut] }), 0, 200_000],
    ['keep[0].leastLength', (leastLength) => withRule({ leastLength }), 1, 200_000],
    ['keep[0].leastWidth', (leastWidth) => withRule({ leastWidth }), 1, 200_000],
    [
      'keep[0].coinsPerMillion',
      (coinsPerMillion) => withRule({ coinsPerMillion, metal: 'zinc' }),
      0,
      100_000_000,
    ],
    ['keep[0].millions', (millions) => withRule({ millions }), 1, 1_000_000],
    ['keep[0].trouble', (trouble) => withRule({ trouble }), 0, 100_000_000],
    ['weights.layout', (layout) => ({ ...good, weights: { layout } as object }), 0, 1_000_000],
    ['weights.gauge', (gauge) => ({ ...good, weights: { gauge } as object }), 0, 1_000_000],
    ['weights.cut', (cut) => ({ ...good, weights: { cut } as object }), 0, 1_000_000],
  ];

describe('checkProblem', () => {
  it('lets good problems of every kind pass', () => {
    expect(() => checkProblem(good)).not.toThrow();
    fc.assert(
      fc.property(drawnPlan, ({ problem }) => {
        checkProblem(problem);
      }),
      { numRuns: 200 },
    );
  });

  it.each(WHOLE)(
    'takes whole numbers within limits for %s, and nothing else',
    (path, set, least, most) => {
      for (const value of [least, most]) expect(() => checkProblem(set(value))).not.toThrow();
      for (const value of [least - 1, least + 0.5, Number.NaN, -1e9, null, '7']) {
        expect(refusal(set(value))).toMatchObject({ code: 'not a whole number', path });
      }
      expect(refusal(set(Number.POSITIVE_INFINITY))).toMatchObject({ path });
      const over = refusal(set(most + 1));
      expect(over).toMatchObject({
        code: 'too large to compute exactly',
        path,
        received: most + 1,
      });
      expect(over.message).toContain(`at most ${most}; got ${most + 1}`);
    },
  );

  it.each<[string, CuttingProblem, ProblemFault, string, unknown]>([
    ['no pieces', { ...good, pieces: [] }, 'no pieces', 'pieces', []],
    ['no stock', { ...good, stock: [] }, 'no stock', 'stock', []],
    ['spares only', withPiece({ quantity: 0, spares: 2 }), 'nothing wanted', 'pieces', 0],
    ['a piece without a name', withPiece({ id: '' }), 'not a name', 'pieces[0].id', ''],
    ['a number for a name', withPiece({ id: 7 }), 'not a name', 'pieces[0].id', 7],
    [
      'a name used twice',
      { ...good, stock: [sheet, { ...offcut, id: 's' }] },
      'id used twice',
      'stock[1].id',
      's',
    ],
    ['a metal without a name', withSheet({ metal: '' }), 'not a name', 'stock[0].metal', ''],
    [
      'a thickness of 0',
      withPiece({ thickness: 0 }),
      'not a positive number',
      'pieces[0].thickness',
      0,
    ],
    [
      'a thickness below 0',
      withSheet({ thickness: -0.3 }),
      'not a positive number',
      'stock[0].thickness',
      -0.3,
    ],
    [
      'a thickness that is no number',
      withOffcut({ thickness: Number.NaN }),
      'not a positive number',
      'stock[1].thickness',
      Number.NaN,
    ],
    [
      'a thickness without end',
      withRule({ thickness: Number.POSITIVE_INFINITY }),
      'not a positive number',
      'keep[0].thickness',
      Number.POSITIVE_INFINITY,
    ],
    [
      'a slanted rolling',
      withPiece({ rolling: 'slanted' }),
      'not one of the choices',
      'pieces[0].rolling',
      'slanted',
    ],
    [
      'a rolling of stock that is none',
      withOffcut({ rolling: 1 }),
      'not one of the choices',
      'stock[1].rolling',
      1,
    ],
    [
      'another kind of stock',
      withSheet({ kind: 'coil' }),
      'not one of the choices',
      'stock[0].kind',
      'coil',
    ],
    [
      'a turn that is no yes or no',
      withPiece({ mayTurn: 'yes' }),
      'not one of the choices',
      'pieces[0].mayTurn',
      'yes',
    ],
    ['four stages', withShear({ stages: 4 }), 'not one of the choices', 'shear.stages', 4],
    [
      'no first cut',
      withShear({ firstCut: undefined }),
      'not one of the choices',
      'shear.firstCut',
      undefined,
    ],
    [
      'packs that cannot be bought whole',
      withSheet({ packSize: 4, canBuy: 10 }),
      'not whole packs',
      'stock[0].canBuy',
      10,
    ],
    [
      'a kerf that leaves the trim',
      withShear({ kerf: 3, trim: 2 }),
      'kerf wider than trim',
      'shear.kerf',
      3,
    ],
    [
      'a trim that eats the sheet',
      withShear({ trim: 25 }),
      'trim leaves nothing',
      'shear.trim',
      25,
    ],
    [
      'two rules for no named metal',
      { ...good, keep: [rule, { ...rule, metal: 'tin' }, rule] },
      'two rules for one metal',
      'keep[2]',
      rule,
    ],
    // 100 x 50 = 5000 square ticks: at 4200 for a million 21 coins, the price is 20.
    [
      'a rule by which sheets are worth more than they cost',
      withRule({ coinsPerMillion: 4200 }),
      'rule above price',
      'keep[0].coinsPerMillion',
      4200,
    ],
    [
      'a rule by several millions by which sheets are worth more than they cost',
      withRule({ coinsPerMillion: 8400, millions: 2 }),
      'rule above price',
      'keep[0].coinsPerMillion',
      8400,
    ],
    // At 4000 a whole one is worth 20.
    [
      'a sheet in the books for less than it would be kept for',
      withSheet({ bookValue: 19 }),
      'book value below rule',
      'stock[0].bookValue',
      19,
    ],
    [
      'an offcut in the books for less than it would be kept for',
      { ...withOffcut({ length: 40, width: 40, bookValue: 5 }) },
      'book value below rule',
      'stock[1].bookValue',
      5,
    ],
  ])('refuses %s', (_, problem, code, path, received) => {
    expect(refusal(problem)).toMatchObject({ code, path, received });
  });

  it('takes a kerf as wide as the trim, a trim that leaves one tick, and sheets at their price', () => {
    for (const problem of [
      withShear({ kerf: 2, trim: 2 }),
      withShear({ kerf: 3 }),
      withShear({ trim: 24 }),
      withRule({ coinsPerMillion: 4199 }),
      withRule({ coinsPerMillion: 4200, trouble: 1 }),
      withRule({ coinsPerMillion: 8399, millions: 2 }),
      withRule({ coinsPerMillion: 9000, leastWidth: 51 }),
      withRule({ coinsPerMillion: 9000, metal: 'tin' }),
      withSheet({ bookValue: 20 }),
      withSheet({ packSize: 5, canBuy: 10 }),
      withSheet({ packSize: 5 }),
    ]) {
      expect(() => checkProblem(problem)).not.toThrow();
    }
  });

  it('refuses a rate that makes the worth of a whole sheet inexact', () => {
    // 2^53 - 1 over the 200000 x 200000 ticks of the largest sheet.
    const vast = (coinsPerMillion: number) => ({
      ...withSheet({ length: 200_000, width: 200_000, canBuy: 0, onHand: 1 }),
      keep: [{ ...rule, coinsPerMillion }],
    });
    expect(() => checkProblem(vast(225_179))).not.toThrow();
    expect(refusal(vast(225_180))).toMatchObject({
      code: 'too large to compute exactly',
      path: 'keep[0].coinsPerMillion',
      received: 225_180,
    });
  });

  it('minds no price of sheets that cannot be bought', () => {
    const problem = withSheet({ price: 0, canBuy: 0, onHand: 2 });
    expect(() => checkProblem(problem)).not.toThrow();
    expect(refusal(withSheet({ price: 0 })).code).toBe('rule above price');
  });

  it('takes ten million pieces together and no more', () => {
    const many = (last: number): CuttingProblem => ({
      ...good,
      pieces: Array.from({ length: 10 }, (_, i) => ({
        ...piece,
        id: `${i}`,
        quantity: 600_000,
        spares: i === 9 ? last : 400_000,
      })),
    });
    expect(() => checkProblem(many(400_000))).not.toThrow();
    const error = refusal(many(400_001));
    expect(error).toMatchObject({
      code: 'too many to compute',
      path: 'pieces',
      received: 10_000_001,
    });
  });

  it.each<[string, (count: number) => CuttingProblem]>([
    [
      'pieces',
      (n) => ({ ...good, pieces: Array.from({ length: n }, (_, i) => ({ ...piece, id: `${i}` })) }),
    ],
    [
      'stock',
      (n) => ({ ...good, stock: Array.from({ length: n }, (_, i) => ({ ...offcut, id: `${i}` })) }),
    ],
    [
      'keep',
      (n) => ({ ...good, keep: Array.from({ length: n }, (_, i) => ({ ...rule, metal: `${i}` })) }),
    ],
  ])('takes ten thousand entries of %s and no more', (path, set) => {
    expect(() => checkProblem(set(10_000))).not.toThrow();
    expect(refusal(set(10_001))).toMatchObject({
      code: 'too many to compute',
      path,
      received: 10_001,
    });
  });
});
