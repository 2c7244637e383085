import { beforeAll, describe, expect, it } from 'vitest';
import type { CuttingPlan, Layout } from '../plan.js';
import { planCutting } from '../plan-cutting.js';
import type { CuttingProblem } from '../problem.js';
import type { PlanFault } from './plan-fault.js';
import { verifyPlan } from './verify-plan.js';

const problem: CuttingProblem = {
  pieces: [
    { id: 'heart', length: 30, width: 4, quantity: 9, mayTurn: true },
    { id: 'acorn', length: 22, width: 3, quantity: 8, mayTurn: false },
    { id: 'lid', length: 10, width: 9, quantity: 3, mayTurn: true },
  ],
  stock: [
    { kind: 'sheet', id: 'sheet', length: 60, width: 20, price: 700, onHand: 1, canBuy: 'any' },
    { kind: 'offcut', id: 'A', length: 31, width: 8 },
  ],
  shear: { firstCut: 'along', longestCut: 60 },
};

/** By hand: three bands on the sheet, with a trim above the narrower piece of the first. */
const small: CuttingProblem = {
  pieces: [
    { id: 'wide', length: 6, width: 4, quantity: 1, mayTurn: true },
    { id: 'narrow', length: 3, width: 2, quantity: 2, mayTurn: false },
  ],
  stock: [{ kind: 'sheet', id: 's', length: 10, width: 7, price: 5, onHand: 0, canBuy: 2 }],
  shear: { firstCut: 'either', longestCut: 10 },
};
const drawn: Layout = {
  stock: 's',
  count: 1,
  pieces: [
    { piece: 'wide', x: 0, y: 0, length: 6, width: 4, turned: false },
    { piece: 'narrow', x: 6, y: 0, length: 3, width: 2, turned: false },
    { piece: 'narrow', x: 0, y: 4, length: 3, width: 2, turned: false },
  ],
  cuts: [
    { stage: 1, x1: 0, y1: 4, x2: 10, y2: 4 },
    { stage: 1, x1: 0, y1: 6, x2: 10, y2: 6 },
    { stage: 2, x1: 6, y1: 0, x2: 6, y2: 4 },
    { stage: 2, x1: 9, y1: 0, x2: 9, y2: 4 },
    { stage: 2, x1: 3, y1: 4, x2: 3, y2: 6 },
    { stage: 3, x1: 6, y1: 2, x2: 9, y2: 2 },
  ],
  remnants: [
    { x: 9, y: 0, length: 1, width: 4, keep: false, value: 0 },
    { x: 6, y: 2, length: 3, width: 2, keep: false, value: 0 },
    { x: 3, y: 4, length: 7, width: 2, keep: false, value: 0 },
    { x: 0, y: 6, length: 10, width: 1, keep: false, value: 0 },
  ],
};
const good: CuttingPlan = {
  layouts: [drawn],
  buy: [{ stock: 's', count: 1, cost: 5 }],
  cost: 5,
  parts: { bought: 5, fromShop: 0, kept: 0 },
  spares: [],
  bound: { cost: 5, proven: true },
  effort: { rounds: 0, patterns: 0, integerMasters: 0, nodes: 0, ending: 'bound met' },
};

function changed<T>(items: readonly T[], index: number, change: Partial<T>): readonly T[] {
  return items.map((item, i) => (i === index ? { ...item, ...change } : item));
}

function faultsOf(
  layout: Partial<Layout>,
  of: CuttingProblem = small,
): readonly PlanFault['code'][] {
  return codes(verifyPlan(of, { ...good, layouts: [{ ...drawn, ...layout }] }));
}

function codes(faults: readonly PlanFault[]): readonly PlanFault['code'][] {
  return [...new Set(faults.map((fault) => fault.code))];
}

describe('verifyPlan', () => {
  it('passes a good plan drawn by hand', () => {
    expect(verifyPlan(small, good)).toEqual([]);
  });

  it.each<[string, Partial<Layout>, PlanFault['code']]>([
    ['stock that is not there', { stock: 'x' }, 'unknown stock'],
    [
      'a piece that is not there',
      { pieces: changed(drawn.pieces, 0, { piece: 'x' }) },
      'unknown piece',
    ],
    ['a piece drawn too small', { pieces: changed(drawn.pieces, 0, { length: 5 }) }, 'wrong size'],
    [
      'a piece turned that must not',
      { pieces: changed(drawn.pieces, 1, { turned: true, length: 2, width: 3 }) },
      'must not turn',
    ],
    [
      'pieces that overlap',
      { pieces: changed(drawn.pieces, 1, { x: 5 }) },
      'pieces and remnants differ from what the cuts leave',
    ],
    [
      'a piece outside the sheet',
      { pieces: changed(drawn.pieces, 1, { x: 60 }) },
      'pieces and remnants differ from what the cuts leave',
    ],
    [
      'a remnant left out',
      { remnants: drawn.remnants.slice(1) },
      'pieces and remnants differ from what the cuts leave',
    ],
    [
      'a cut left out',
      { cuts: drawn.cuts.slice(0, -1) },
      'pieces and remnants differ from what the cuts leave',
    ],
    ['a cut that stops short', { cuts: changed(drawn.cuts, 0, { x2: 9 }) }, 'bad cut'],
    ['a slanted cut', { cuts: changed(drawn.cuts, 0, { y2: 5 }) }, 'bad cut'],
    ['cuts in an order that cannot be made', { cuts: [...drawn.cuts].reverse() }, 'bad cut'],
    ['a cut of the wrong stage', { cuts: changed(drawn.cuts, 5, { stage: 2 }) }, 'wrong stage'],
    [
      'a first-stage cut within a strip',
      { cuts: changed(drawn.cuts, 2, { stage: 1 }) },
      'wrong stage',
    ],
    ['no copies', { count: 0 }, 'not a whole number'],
    ['half a copy', { count: 1.5 }, 'not a whole number'],
    ['a broken tick', { remnants: changed(drawn.remnants, 0, { x: 9.5 }) }, 'not a whole number'],
    ['one layout cut too often', { count: 2 }, 'demand not met exactly'],
    ['more sheets than can be bought', { count: 3 }, 'more stock than there is'],
  ])('finds %s', (_, change, code) => {
    expect(faultsOf(change)).toContain(code);
  });

  it('finds cuts that the shear cannot make', () => {
    expect(faultsOf({}, { ...small, shear: { firstCut: 'either', longestCut: 9 } })).toEqual([
      'cut too long',
    ]);
    expect(faultsOf({}, { ...small, shear: { firstCut: 'across' } })).toEqual([
      'wrong first direction',
    ]);
  });

  it.each<[string, Partial<CuttingPlan>, PlanFault['code']]>([
    [
      'a purchase left out',
      { buy: [], cost: 0, bound: { cost: 0, proven: true } },
      'wrong purchase',
    ],
    ['a purchase too many', { buy: [{ stock: 's', count: 2, cost: 10 }] }, 'wrong purchase'],
    ['a wrong price', { buy: [{ stock: 's', count: 1, cost: 4 }] }, 'wrong purchase'],
    [
      'a purchase of something else',
      { buy: [...good.buy, { stock: 'x', count: 1, cost: 0 }] },
      'wrong purchase',
    ],
    ['a cost that does not add up', { cost: 6 }, 'wrong cost'],
    ['a bound above the cost', { bound: { cost: 6, proven: false } }, 'bound contradicts cost'],
    ['a bound below 0', { bound: { cost: -1, proven: false } }, 'bound contradicts cost'],
    ['a proof without one', { bound: { cost: 4, proven: true } }, 'bound contradicts cost'],
    ['nothing cut', { layouts: [] }, 'demand not met exactly'],
  ])('finds %s', (_, change, code) => {
    expect(codes(verifyPlan(small, { ...good, ...change }))).toContain(code);
  });

  describe('on a plan of the planner', () => {
    let plan: CuttingPlan;
    beforeAll(async () => {
      const outcome = await planCutting(problem);
      if (outcome.status !== 'planned') throw new Error(outcome.status);
      plan = outcome.plan;
    });

    it('passes it', () => {
      expect(verifyPlan(problem, plan)).toEqual([]);
    });

    it('notices any single number of any piece, cut or remnant that is changed by one', () => {
      let changes = 0;
      plan.layouts.forEach((layout, at) => {
        for (const part of ['pieces', 'cuts', 'remnants'] as const) {
          const entries: readonly object[] = layout[part];
          entries.forEach((entry, i) => {
            for (const [key, value] of Object.entries(entry)) {
              if (typeof value !== 'number') continue;
              const bent = { ...layout, [part]: changed(entries, i, { [key]: value + 1 }) };
              const layouts = changed<Layout>(plan.layouts, at, bent);
              expect(
                verifyPlan(problem, { ...plan, layouts }),
                `${part}[${i}].${key} of layout ${at}`,
              ).not.toEqual([]);
              changes++;
            }
          });
        }
      });
      expect(changes).toBeGreaterThan(100);
    });
  });
});
