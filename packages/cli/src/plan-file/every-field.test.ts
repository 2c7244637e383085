import type { CuttingPlan, CuttingProblem } from '@stripwright/nesting';
import { describe, expect, test } from 'vitest';
import { DocumentError } from '../faults/fault.js';
import { read, SMALL_ORDER } from '../order/small-order.test.support.js';
import type { PlanFile } from './plan-file.js';
import { readPlanFile } from './read-plan-file.js';
import { at, copyOf } from './small-plan.test.support.js';
import { toPlanFile } from './to-plan-file.js';

/** A problem with every field that one can have, in marks of 1/32 in. Whether it can be cut is no matter here. */
const problem: CuttingProblem = {
  pieces: read(SMALL_ORDER).blanks.map(({ name, length, width, quantity, mayTurn }, index) => ({
    id: name,
    length,
    width,
    quantity,
    mayTurn,
    metal: 'copper',
    thickness: 0.5461,
    rolling: index > 2 ? 'along' : 'across',
    spares: index + 1,
  })),
  stock: [
    {
      kind: 'sheet',
      id: 'Large',
      length: 896,
      width: 640,
      price: 740,
      onHand: 2,
      canBuy: 10,
      packSize: 5,
      bookValue: 501,
      rolling: 'along',
      metal: 'copper',
      thickness: 0.5461,
    },
    {
      kind: 'offcut',
      id: 'A',
      length: 560,
      width: 192,
      bookValue: 99,
      rolling: 'across',
      metal: 'tinplate',
      thickness: 0.28,
    },
  ],
  shear: {
    firstCut: 'across',
    longestCut: 1152,
    narrowestStrip: 9,
    kerf: 1,
    trim: 8,
    stages: 'free',
  },
  keep: [
    {
      leastLength: 192,
      leastWidth: 32,
      coinsPerMillion: 1043,
      millions: 10,
      trouble: 25,
      metal: 'copper',
      thickness: 0.5461,
    },
    { leastLength: 64, leastWidth: 64, coinsPerMillion: 0 },
  ],
  weights: { layout: 80, gauge: 7, cut: 0 },
};

const plan: CuttingPlan = {
  layouts: [
    {
      stock: 'Large',
      count: 3,
      pieces: [{ piece: 'Heart', x: 8, y: 8, length: 300, width: 40, turned: false }],
      cuts: [
        { stage: 0, x1: 7, y1: 0, x2: 7, y2: 640 },
        { stage: 7, x1: 8, y1: 48, x2: 888, y2: 48 },
      ],
      remnants: [
        { x: 8, y: 49, length: 880, width: 583, keep: true, value: 510 },
        { x: 309, y: 8, length: 579, width: 40, keep: false, value: 0 },
      ],
    },
  ],
  buy: [{ stock: 'Large', count: 5, cost: 3700 }],
  cost: 3172,
  parts: { bought: 3700, fromShop: 1002, kept: 1530 },
  spares: [{ piece: 'Heart', count: 3 }],
  bound: { cost: 3000, proven: false },
  effort: { rounds: 4, patterns: 30, integerMasters: 2, nodes: 17, ending: 'called off' },
};

const fileOf = (given: CuttingProblem, made: CuttingPlan): PlanFile =>
  toPlanFile(read(SMALL_ORDER), given, made);

function refusal(file: PlanFile): string {
  try {
    readPlanFile(JSON.stringify(file), 'plan.json');
  } catch (error) {
    if (error instanceof DocumentError) return error.message;
    throw error;
  }
  return 'read';
}

describe('a plan file', () => {
  test('holds every field of a problem and a plan, and reads back as both', () => {
    const onFile = readPlanFile(JSON.stringify(fileOf(problem, plan)), 'plan.json');
    expect(onFile.problem).toEqual(problem);
    expect(onFile.plan).toEqual(plan);
  });

  test('says what rack a plan was made from, and which stock lies there', () => {
    const used = {
      id: 'a rack',
      revision: 12,
      fitting: 70,
      considered: 60,
      unsureThickness: 3,
      onRack: new Map([
        ['Large', { mark: 'CCY', place: '' }],
        ['A', { mark: 'CDV', place: 'left rack' }],
      ]),
    };
    const file = toPlanFile(read(SMALL_ORDER), problem, plan, used);
    const { rack, stock } = readPlanFile(JSON.stringify(file), 'plan.json').file;
    const { onRack: _, ...told } = used;
    expect(rack).toEqual(told);
    expect(stock.map(({ id, mark, place }) => ({ id, mark, place }))).toEqual([
      { id: 'Large', mark: 'CCY', place: undefined },
      { id: 'A', mark: 'CDV', place: 'left rack' },
    ]);
  });

  test('of another version says what to do', () => {
    const file = { ...fileOf(problem, plan), schemaVersion: 2, surprise: true };
    expect(refusal(file as unknown as PlanFile)).toBe(
      'plan.json: schemaVersion is not 1, the only one that can be read here: plan the order ' +
        'again, or read it with the stripwright that wrote it; found 2',
    );
  });

  test('leaves out what a problem leaves out', () => {
    const { shear } = problem;
    const bare: CuttingProblem = {
      pieces: problem.pieces.map(({ id, length, width, quantity, mayTurn }) => ({
        id,
        length,
        width,
        quantity,
        mayTurn,
      })),
      stock: [
        { kind: 'sheet', id: 'S', length: 9, width: 9, price: 1, onHand: 0, canBuy: 'any' },
        { kind: 'offcut', id: 'Large', length: 560, width: 192 },
      ],
      shear: { firstCut: shear.firstCut },
    };
    const file = fileOf(bare, plan);
    const onFile = readPlanFile(JSON.stringify(file), 'plan.json');
    // Strict: a field that is there but undefined is not the same.
    expect(onFile.problem).toStrictEqual(bare);
    expect(Object.keys(file)).not.toContain('keep');
    expect(Object.keys(file.shear)).toEqual(['firstCut']);
    // An explicit 0 is not the same as nothing said.
    const zero = { ...bare, shear: { firstCut: shear.firstCut, kerf: 0, trim: 0 } };
    const again = readPlanFile(JSON.stringify(fileOf(zero, plan)), 'plan.json');
    expect(again.problem).toStrictEqual(zero);
  });

  test('is in millimetres and money', () => {
    const file = fileOf(problem, plan);
    expect(file.shear).toMatchObject({ kerf: 0.79375, trim: 6.35, narrowestStrip: 7.14375 });
    expect(at(file.stock, 0)).toMatchObject({ bookValue: 5.01, packSize: 5, thickness: 0.5461 });
    expect(file.keep?.[0]).toMatchObject({ leastLength: 152.4, worth: 10.43, trouble: 0.25 });
    expect(at(at(file.layouts, 0).remnants, 0)).toMatchObject({ keep: true, value: 5.1 });
    expect(file.parts).toEqual({ bought: 37, fromShop: 10.02, kept: 15.3 });
    expect(file.cost).toBe(31.72);
  });

  test.each<[name: string, spoil: (file: PlanFile) => void, fault: string]>([
    [
      'a kerf off the marks',
      (file) => {
        file.shear.kerf = 1;
      },
      'plan.json: shear.kerf must be a whole number of marks of 0.79375 mm; found 1',
    ],
    [
      'a book value with parts of a coin',
      (file) => {
        at(file.stock, 1).bookValue = 0.005;
      },
      'plan.json: stock[1].bookValue must be a price with at most two decimals, such as 7.40; found 0.005',
    ],
    [
      'the worth of a remnant with parts of a coin',
      (file) => {
        at(at(file.layouts, 0).remnants, 0).value = 5.123;
      },
      'plan.json: layouts[0].remnants[0].value must be a price with at most two decimals, such as 7.40; found 5.123',
    ],
    [
      'a rule off the marks',
      (file) => {
        file.keep = [{ leastLength: 10, leastWidth: 25.4, worth: 0 }];
      },
      'plan.json: keep[0].leastLength must be a whole number of marks of 0.79375 mm; found 10',
    ],
  ])('is refused with %s', (_name, spoil, fault) => {
    const file = copyOf(fileOf(problem, plan));
    spoil(file);
    expect(refusal(file)).toBe(fault);
  });
});
