import { describe, expect, it } from 'vitest';
import type { CuttingPlan, Layout } from '../plan.js';
import type { CuttingProblem, Offcut, Piece, Shear, Sheet, Stages } from '../problem.js';
import type { PlanFault } from './plan-fault.js';
import { verifyPlan } from './verify-plan.js';

// Every plan here is drawn and reckoned by hand.

const sheet = (length: number, width: number, more: Partial<Sheet> = {}): Sheet => ({
  kind: 'sheet',
  id: 's',
  length,
  width,
  price: 50,
  onHand: 0,
  canBuy: 'any',
  ...more,
});

const piece = (id: string, length: number, width: number, more: Partial<Piece> = {}): Piece => ({
  id,
  length,
  width,
  quantity: 1,
  mayTurn: false,
  ...more,
});

/** A plan that buys one sheet for 50 and keeps nothing, unless told otherwise. */
const planOf = (layout: Omit<Layout, 'stock' | 'count'>, more: Partial<CuttingPlan> = {}) => ({
  layouts: [{ stock: 's', count: 1, ...layout }],
  buy: [{ stock: 's', count: 1, cost: 50 }],
  cost: 50,
  parts: { bought: 50, fromShop: 0, kept: 0 },
  spares: [],
  bound: { cost: 50, proven: true },
  effort: {
    rounds: 0,
    patterns: 0,
    integerMasters: 0,
    nodes: 0,
    ending: 'bound met' as const,
  },
  ...more,
});

const scrap = (x: number, y: number, length: number, width: number) => ({
  x,
  y,
  length,
  width,
  keep: false,
  value: 0,
});

const level = (stage: number, x1: number, x2: number, y: number) => ({
  stage,
  x1,
  y1: y,
  x2,
  y2: y,
});
const upright = (stage: number, y1: number, y2: number, x: number) => ({
  stage,
  x1: x,
  y1,
  x2: x,
  y2,
});

function faults(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault['code'][] {
  return [...new Set(verifyPlan(problem, plan).map((fault) => fault.code))].sort();
}

const notTheParts = 'pieces and remnants differ from what the cuts leave';

/** Two strips of 10 x 4 with a kerf of 1 between them; the second's own kerf runs off the edge. */
const sawn = {
  problem: {
    pieces: [piece('a', 10, 4, { quantity: 2 })],
    stock: [sheet(10, 9)],
    shear: { firstCut: 'along', kerf: 1 } as Shear,
  },
  plan: planOf({
    pieces: [
      { piece: 'a', x: 0, y: 0, length: 10, width: 4, turned: false },
      { piece: 'a', x: 0, y: 5, length: 10, width: 4, turned: false },
    ],
    cuts: [level(1, 0, 10, 4)],
    remnants: [],
  }),
};

/** A trim of 2 with a kerf of 1 around a sheet of 14 x 13 leaves the same 10 x 9. */
const trimmed = {
  problem: {
    ...sawn.problem,
    stock: [sheet(14, 13)],
    shear: { firstCut: 'along', kerf: 1, trim: 2, longestCut: 14 } as Shear,
  },
  plan: planOf({
    pieces: sawn.plan.layouts[0].pieces.map((a) => ({ ...a, x: a.x + 2, y: a.y + 2 })),
    cuts: [
      upright(0, 0, 13, 1),
      upright(0, 0, 13, 12),
      level(0, 2, 12, 1),
      level(0, 2, 12, 11),
      level(1, 2, 12, 6),
    ],
    remnants: [],
  }),
};

/** 10 x 6 in three stages: one band, a section of 4 with two stacked, one of 6, trimmed. */
const threeStages = {
  problem: {
    pieces: [piece('a', 4, 2, { quantity: 2 }), piece('b', 5, 6), piece('c', 3, 2)],
    stock: [sheet(10, 6)],
    shear: { firstCut: 'along', stages: 3 } as Shear,
  },
  plan: planOf({
    pieces: [
      { piece: 'a', x: 0, y: 0, length: 4, width: 2, turned: false },
      { piece: 'a', x: 0, y: 2, length: 4, width: 2, turned: false },
      { piece: 'c', x: 0, y: 4, length: 3, width: 2, turned: false },
      { piece: 'b', x: 4, y: 0, length: 5, width: 6, turned: false },
    ],
    cuts: [
      upright(2, 0, 6, 4),
      upright(2, 0, 6, 9),
      level(3, 0, 4, 2),
      level(3, 0, 4, 4),
      upright(4, 4, 6, 3),
    ],
    remnants: [scrap(9, 0, 1, 6), scrap(3, 4, 1, 2)],
  }),
};

/** Four around a rest, cut inwards: every cut changes direction. */
const spiral = {
  problem: {
    pieces: [piece('n', 9, 1), piece('e', 1, 8), piece('s', 8, 1), piece('w', 1, 7)],
    stock: [sheet(9, 9)],
    shear: { firstCut: 'along', stages: 'free' } as Shear,
  },
  plan: planOf({
    pieces: [
      { piece: 'n', x: 0, y: 8, length: 9, width: 1, turned: false },
      { piece: 'e', x: 8, y: 0, length: 1, width: 8, turned: false },
      { piece: 's', x: 0, y: 0, length: 8, width: 1, turned: false },
      { piece: 'w', x: 0, y: 1, length: 1, width: 7, turned: false },
    ],
    cuts: [level(1, 0, 9, 8), upright(2, 0, 8, 8), level(3, 0, 8, 1), upright(4, 1, 8, 1)],
    remnants: [scrap(1, 1, 7, 7)],
  }),
};

/** Three of 4 x 3 end to end on a strip rolled along its length, one lying turned. */
const rolled = {
  problem: {
    pieces: [
      piece('with', 4, 3, { rolling: 'along', quantity: 2 }),
      piece('over', 3, 4, { rolling: 'across', mayTurn: true }),
    ],
    stock: [sheet(12, 3, { rolling: 'along', metal: 'tin', thickness: 0.3 })],
    shear: { firstCut: 'along' } as Shear,
  },
  plan: planOf({
    pieces: [
      { piece: 'with', x: 0, y: 0, length: 4, width: 3, turned: false },
      { piece: 'with', x: 4, y: 0, length: 4, width: 3, turned: false },
      { piece: 'over', x: 8, y: 0, length: 4, width: 3, turned: true },
    ],
    cuts: [upright(2, 0, 3, 4), upright(2, 0, 3, 8)],
    remnants: [],
  }),
};
const tin = (problem: CuttingProblem): CuttingProblem => ({
  ...problem,
  pieces: problem.pieces.map((entry) => ({ ...entry, metal: 'tin', thickness: 0.3 })),
});

/**
 * Sheets of 20 x 10 in packs of 3, one on hand; three cut, so one pack is bought
 * and a sheet of it left over. A million square ticks are worth 150000 coins and
 * each offcut costs 2 in trouble: a whole sheet of 200 is worth 30 - 2 = 28, the
 * rest of 10 x 10 is worth 15 - 2 = 13. The spare is the third of the pieces.
 */
const packed = {
  problem: {
    pieces: [piece('a', 10, 10, { quantity: 2, spares: 2 })],
    stock: [sheet(20, 10, { packSize: 3, onHand: 1 })],
    shear: { firstCut: 'across' } as Shear,
    keep: [{ leastLength: 10, leastWidth: 10, coinsPerMillion: 150_000, trouble: 2 }],
  },
  plan: {
    ...planOf({
      pieces: [{ piece: 'a', x: 0, y: 0, length: 10, width: 10, turned: false }],
      cuts: [upright(1, 0, 10, 10)],
      remnants: [{ x: 10, y: 0, length: 10, width: 10, keep: true, value: 13 }],
    }),
    buy: [{ stock: 's', count: 3, cost: 150 }],
    // Kept: three rests of 13 and the sheet left over; in the books the one on hand is worth 28.
    parts: { bought: 150, fromShop: 28, kept: 3 * 13 + 28 },
    cost: 150 + 28 - 67,
    bound: { cost: 111, proven: true },
    spares: [{ piece: 'a', count: 1 }],
  },
};
const three = (plan: typeof packed.plan): CuttingPlan => ({
  ...plan,
  layouts: plan.layouts.map((layout) => ({ ...layout, count: 3 })),
});

describe('verifyPlan on plans drawn by hand', () => {
  it.each<[string, CuttingProblem, CuttingPlan]>([
    ['with a kerf', sawn.problem, sawn.plan],
    ['with trimmed edges', trimmed.problem, trimmed.plan],
    ['in three stages', threeStages.problem, threeStages.plan],
    ['in free guillotine', spiral.problem, spiral.plan],
    ['with rolling directions', tin(rolled.problem), rolled.plan],
    ['with packs, spares and kept offcuts', packed.problem, three(packed.plan)],
  ])('passes one %s', (_, problem, plan) => {
    expect(verifyPlan(problem, plan)).toEqual([]);
  });

  it('notices another kerf than the one reckoned with', () => {
    const kerf = (ticks: number) => ({
      ...sawn.problem,
      shear: { ...sawn.problem.shear, kerf: ticks },
    });
    expect(faults(kerf(0), sawn.plan)).toEqual([notTheParts]);
    expect(faults(kerf(2), sawn.plan)).toEqual([notTheParts]);
  });

  it('notices edges that are not trimmed, or trimmed otherwise', () => {
    const { problem, plan } = trimmed;
    const [layout] = plan.layouts;
    const cuts = (change: readonly (typeof layout.cuts)[number][]) => ({
      ...plan,
      layouts: [{ ...layout, cuts: change }],
    });
    const [left, right, bottom, top, rest] = layout.cuts;
    expect(faults(problem, cuts([rest]))).toEqual(['edges not trimmed']);
    expect(faults(problem, cuts([right, left, bottom, top, rest]))).toEqual(['edges not trimmed']);
    expect(faults(problem, cuts([left, right, bottom, top]))).toEqual([notTheParts]);
    expect(faults(problem, cuts([left, right, bottom, rest, top]))).toEqual([
      'bad cut',
      'edges not trimmed',
    ]);
    const offcut: Offcut = { kind: 'offcut', id: 's', length: 14, width: 13 };
    expect(faults({ ...problem, stock: [offcut] }, plan)).toContain('edges not trimmed');
  });

  it('counts the trims of the edges among the cuts that can be too long, not too narrow', () => {
    const { problem, plan } = trimmed;
    const limits = (more: Partial<Shear>) => ({ ...problem, shear: { ...problem.shear, ...more } });
    // The two first trims are 13 long, the others and the cut 10.
    expect(faults(limits({ longestCut: 12 }), plan)).toEqual(['cut too long']);
    expect(faults(limits({ longestCut: 13 }), plan)).toEqual([]);
    // The trims are 2 wide, what the cut parts is 4 wide.
    expect(faults(limits({ narrowestStrip: 4 }), plan)).toEqual([]);
    expect(faults(limits({ narrowestStrip: 5 }), plan)).toEqual(['strip too narrow']);
  });

  it('notices stages that the shop does not work in', () => {
    const stages = (count: Stages) => ({
      ...threeStages.problem,
      shear: { ...threeStages.problem.shear, stages: count },
    });
    expect(faults(stages('free'), threeStages.plan)).toEqual([]);
    expect(faults(stages(2), threeStages.plan)).toEqual(['wrong stage']);
    const three = { ...spiral.problem, shear: { ...spiral.problem.shear, stages: 3 as const } };
    // The last cut frees a piece and leaves a remnant: that is a trim.
    expect(faults(three, spiral.plan)).toEqual([]);
    const shear: Shear = { firstCut: 'along' };
    expect(faults({ ...spiral.problem, shear }, spiral.plan)).toEqual(['wrong stage']);
  });

  it('notices a last trim that frees two pieces', () => {
    const [layout] = threeStages.plan.layouts;
    const pieces = [
      ...layout.pieces,
      { piece: 'd', x: 3, y: 4, length: 1, width: 2, turned: false },
    ];
    const problem = {
      ...threeStages.problem,
      pieces: [...threeStages.problem.pieces, piece('d', 1, 2)],
    };
    const plan = planOf({ ...layout, pieces, remnants: layout.remnants.slice(0, 1) });
    expect(faults(problem, plan)).toEqual(['wrong stage']);
    const shear: Shear = { firstCut: 'along', stages: 'free' };
    expect(faults({ ...problem, shear }, plan)).toEqual([]);
  });

  it('counts the stages of free cuts by their changes of direction', () => {
    const [layout] = spiral.plan.layouts;
    const cuts = layout.cuts.with(3, { ...layout.cuts[3], stage: 6 });
    expect(faults(spiral.problem, planOf({ ...layout, cuts }))).toEqual(['wrong stage']);
  });

  it('notices metal of another name or thickness', () => {
    expect(faults(rolled.problem, rolled.plan)).toEqual(['other metal']);
    const thick = tin(rolled.problem).pieces.map((entry) => ({ ...entry, thickness: 0.4 }));
    expect(faults({ ...rolled.problem, pieces: thick }, rolled.plan)).toEqual(['other metal']);
  });

  it('notices pieces that lie against the rolling', () => {
    const { stock, ...rest } = tin(rolled.problem);
    const turned = stock.map((entry) => ({ ...entry, rolling: 'across' as const }));
    expect(faults({ ...rest, stock: turned }, rolled.plan)).toEqual(['against the rolling']);
    const unknown = stock.map(({ rolling, ...entry }) => entry);
    expect(faults({ ...rest, stock: unknown }, rolled.plan)).toEqual(['against the rolling']);
    const free = rest.pieces.map(({ rolling, ...entry }) => entry);
    expect(faults({ ...rest, pieces: free, stock: unknown }, rolled.plan)).toEqual([]);
  });

  it('notices packs that are broken, too many or not to be had', () => {
    const { problem } = packed;
    const plan = three(packed.plan);
    const [entry] = problem.stock;
    const others = (change: Partial<Sheet>) => ({ ...problem, stock: [{ ...entry, ...change }] });
    expect(faults(others({ packSize: 1 }), plan)).toEqual(['wrong cost', 'wrong purchase']);
    expect(faults(others({ packSize: 2 }), plan)).toEqual(['wrong cost', 'wrong purchase']);
    expect(faults(others({ canBuy: 3 }), plan)).toEqual([]);
    expect(faults(others({ canBuy: 2 }), plan)).toEqual(['more stock than there is']);
    expect(faults(others({ canBuy: 0 }), plan)).toEqual(['more stock than there is']);
  });

  it('notices book values that were not charged', () => {
    const { problem } = packed;
    const stock = [{ ...problem.stock[0], bookValue: 30 }];
    expect(verifyPlan({ ...problem, stock }, three(packed.plan))).toEqual([
      {
        code: 'wrong cost',
        message: 'the book value of what is used comes to 30, the plan says 28',
      },
      { code: 'wrong cost', message: 'the cost comes to 113, the plan says 111' },
    ]);
  });

  it('notices spares that nobody asked for, and more or fewer than are cut', () => {
    const { problem } = packed;
    const plan = three(packed.plan);
    const spares = (count: number) => ({ ...plan, spares: [{ piece: 'a', count }] });
    expect(faults(problem, { ...plan, spares: [] })).toEqual(['demand not met exactly']);
    expect(faults(problem, spares(2))).toEqual(['demand not met exactly']);
    expect(faults(problem, spares(3))).toEqual(['demand not met exactly', 'wrong spares']);
    const none = { ...problem, pieces: [piece('a', 10, 10, { quantity: 2 })] };
    expect(faults(none, plan)).toEqual(['wrong spares']);
    const twice = { ...plan, spares: [...plan.spares, ...plan.spares] };
    expect(faults(problem, twice)).toEqual(['demand not met exactly', 'wrong spares']);
  });

  it('notices offcuts that are kept or valued otherwise than by the rule', () => {
    const { problem } = packed;
    const plan = three(packed.plan);
    const rule = (change: object) => ({ ...problem, keep: [{ ...problem.keep[0], ...change }] });
    expect(faults({ ...problem, keep: [] }, plan)).toEqual(['wrong cost', 'wrong remnant']);
    expect(faults(rule({ metal: 'tin' }), plan)).toEqual(['wrong cost', 'wrong remnant']);
    expect(faults(rule({ leastLength: 11 }), plan)).toEqual(['wrong remnant']);
    expect(faults(rule({ leastWidth: 11 }), plan)).toEqual(['wrong cost', 'wrong remnant']);
    expect(faults(rule({ trouble: 3 }), plan)).toEqual(['wrong cost', 'wrong remnant']);
    expect(faults(rule({ coinsPerMillion: 150_000, trouble: 2 }), plan)).toEqual([]);
  });

  it('rounds what an offcut is worth down to whole coins, and never below 0', () => {
    // 10 x 10 at 159999: 15.9999 coins; less 16 in trouble, nothing. A whole sheet: 31 - 16.
    const worth = (coinsPerMillion: number, trouble: number, value: number, whole: number) => {
      const plan = three(packed.plan);
      const [layout] = plan.layouts;
      const remnants = layout.remnants.map((remnant) => ({ ...remnant, value }));
      const kept = 3 * value + whole;
      const cost = 150 + whole - kept;
      return faults(
        { ...packed.problem, keep: [{ ...packed.problem.keep[0], coinsPerMillion, trouble }] },
        {
          ...plan,
          layouts: [{ ...layout, remnants }],
          parts: { bought: 150, fromShop: whole, kept },
          cost,
          bound: { cost, proven: true },
        },
      );
    };
    expect(worth(159_999, 0, 15, 31)).toEqual([]);
    expect(worth(159_999, 16, 0, 15)).toEqual([]);
  });
});
