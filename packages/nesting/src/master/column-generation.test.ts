import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { everyCutting } from '../every-cutting.test.support.js';
import { keepValue } from '../keep-value.test.support.js';
import { loadHighs } from '../least-cost.test.support.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import { barProblem } from '../plan-cutting.test.support.js';
import type { CuttingProblem, Stages } from '../problem.js';
import { PAPER_ROLLS } from '../published-examples.test.support.js';
import { randomOfKind } from '../random-kinds.test.support.js';
import { groundOf } from '../search/ground.test.support.js';
import { BandMaster } from './band-master.js';
import { closerBound, solveLinear } from './column-generation.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** As many of each piece wanted as fit the largest stock, so that no pattern holds more than is wanted. */
function plenty(problem: CuttingProblem): CuttingProblem {
  const area = Math.max(...problem.stock.map(({ length, width }) => length * width));
  return {
    ...problem,
    pieces: problem.pieces.map((piece) => ({
      ...piece,
      quantity: Math.floor(area / (piece.length * piece.width)),
    })),
  };
}

/** The linear program over all that every stock can yield, handed to HiGHS as text. */
function linearCost(problem: CuttingProblem): number | undefined {
  const objective: string[] = [];
  const rows: string[] = [];
  const bounds: string[] = [];
  const made: string[][] = problem.pieces.map(() => []);
  problem.stock.forEach((stock, s) => {
    const names = everyCutting(problem, stock).map(({ counts, kept }, y) => {
      objective.push(`- ${kept} y_${s}_${y}`);
      counts.forEach((count, piece) => {
        if (count > 0) made[piece].push(`${count} y_${s}_${y}`);
      });
      return `y_${s}_${y}`;
    });
    if (names.length === 0) return;
    const whole = keepValue(problem, stock, stock.length, stock.width);
    objective.push(`+ ${stock.bookValue ?? whole} h_${s}`);
    bounds.push(`0 <= h_${s} <= ${stock.kind === 'sheet' ? stock.onHand : 1}`);
    rows.push(`${names.join(' + ')} - h_${s} - n_${s} <= 0`);
    const price = stock.kind === 'sheet' ? stock.price : 0;
    objective.push(`+ ${price} n_${s}`);
    const buyable = stock.kind === 'sheet' ? stock.canBuy : 0;
    if (buyable !== 'any') bounds.push(`0 <= n_${s} <= ${buyable}`);
  });
  if (made.some((terms) => terms.length === 0)) return undefined;
  made.forEach((terms, piece) => {
    rows.push(`${terms.join(' + ')} >= ${problem.pieces[piece].quantity}`);
  });
  const text = [
    'Minimize',
    ` cost: ${objective.join(' ')}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    'Bounds',
    ...bounds.map((bound) => ` ${bound}`),
    'End',
  ].join('\n');
  const solved = highs.solve(text, { output_flag: false });
  return solved.Status === 'Optimal' ? solved.ObjectiveValue : undefined;
}

async function linearPlan(problem: CuttingProblem) {
  const { ground } = groundOf(problem);
  const master = new BandMaster(ground);
  try {
    const result = await solveLinear({ ...ground, master, enough: () => false });
    return { ...result, scale: ground.scale };
  } finally {
    master.close();
  }
}

const ROLLS = [
  [45, 97],
  [36, 610],
  [31, 395],
  [14, 211],
] as const;

describe('solveLinear', () => {
  const size = { side: 8, pieceTypes: 2, quantity: 1, total: 4, sheetSizes: 2, offcuts: 1 };

  it.each<Stages>([2, 3, 'free'])(
    'comes to what all patterns listed come to, with stages %s',
    async (stages) => {
      let compared = 0;
      const features = {
        kerf: true,
        narrowestStrip: true,
        longestCut: true,
        offcuts: true,
        bookValues: true,
        keep: true,
      };
      await fc.assert(
        fc.asyncProperty(randomOfKind(features, size), fc.boolean(), async (drawn, valued) => {
          const few = drawn.pieces.filter(({ length, width }) => length * width >= 4);
          if (few.length === 0) return;
          const { keep = [], ...without } = drawn;
          const problem = plenty({
            ...(valued ? { ...without, keep } : without),
            pieces: few,
            shear: { ...drawn.shear, stages },
          });
          const least = linearCost(problem);
          if (least === undefined) return;
          compared++;
          const { answer, bound, finished, scale } = await linearPlan(problem);
          expect(finished).toBe(true);
          expect(answer?.cost).toBeCloseTo(least, 4);
          expect(Math.max(0, ...(answer?.short ?? []))).toBeLessThan(1e-6);
          expect(bound.scaled / scale).toBeLessThanOrEqual(least + 1e-6);
          expect(bound.scaled / scale).toBeGreaterThan(least - 1e-3 * (1 + least));
        }),
        { numRuns: 60 },
      );
      expect(compared).toBeGreaterThan(20);
    },
  );

  it.each<[string, number, readonly (readonly [number, number])[], number, number]>([
    // V. Chvatal, Linear Programming, 1983, p. 195: rolls of 100 inches (data published; the
    // linear bound recomputed from them).
    ['a textbook', 100, ROLLS, 452.25, 6],
    // Encyclopedic worked example of the one-dimensional cutting stock problem: its linear
    // bound is published as 72.917.
    ['the paper rolls', 5600, PAPER_ROLLS, 72.917, 3],
  ])('has the linear bound of %s', async (_, length, pieces, least, digits) => {
    const { answer, bound, scale, rounds } = await linearPlan(barProblem(length, pieces));
    expect(answer?.cost).toBeCloseTo(least, digits);
    expect(bound.scaled / scale).toBeCloseTo(least, 3);
    expect(rounds).toBeGreaterThan(1);
  });

  it('learns no band of a width that no sheet is divided into, where there are many kinds', async () => {
    /** So many kinds of strips; how many bands, and how many of them no sheet has a slot for. */
    async function learnt(kinds: number) {
      const { ground } = groundOf({
        pieces: Array.from({ length: kinds }, (_, i) => ({
          id: `strip ${i}`,
          length: 90 + 18 * i,
          width: i % 2 === 0 ? 25 : 38,
          quantity: 20 + i,
          mayTurn: true,
        })),
        stock: [
          { kind: 'sheet', id: 'a', length: 1000, width: 700, price: 9, onHand: 0, canBuy: 'any' },
          { kind: 'sheet', id: 'b', length: 700, width: 500, price: 5, onHand: 0, canBuy: 'any' },
        ],
        shear: { firstCut: 'either', stages: 2 },
      });
      const master = new BandMaster(ground);
      const { finished } = await solveLinear({ ...ground, master, enough: () => false });
      master.close();
      expect(finished).toBe(true);
      const { bands, sheets } = ground.book;
      const divided = new Set(sheets.flatMap(({ slots }) => slots.map(([slot]) => slot)));
      return { bands: bands.length, idle: bands.filter(({ slot }) => !divided.has(slot)).length };
    }
    const many = await learnt(50);
    expect(many.bands).toBeGreaterThan(50);
    expect(many.idle).toBe(0);
    expect((await learnt(10)).idle).toBeGreaterThan(0);
  });

  it('is bounded more closely by closer worths of patterns', async () => {
    const { ground } = groundOf(
      barProblem(100, [
        [45, 97],
        [36, 610],
        [31, 395],
      ]),
    );
    const boundsBy = async (pricer: PatternPricer) => {
      const master = new BandMaster(ground);
      const request = { ...ground, pricer };
      const plan = await solveLinear({ ...request, master, enough: () => false });
      master.close();
      return [plan.bound, closerBound(request, plan)].map(({ scaled }) => scaled / ground.scale);
    };
    const [exact, same] = await boundsBy(ground.pricer);
    expect(same).toBe(exact);
    // Quick to price, but a tenth too high.
    const quick: PatternPricer = {
      price: (values, coin) => {
        const priced = ground.pricer.price(values, coin);
        return { ...priced, worth: priced.worth.map((worth) => Math.ceil(worth * 1.1)) };
      },
    };
    const closer = (share: number): PatternPricer => ({
      ...quick,
      atMost: (values, coin) =>
        ground.pricer.price(values, coin).worth.map((worth) => Math.ceil(worth * share)),
    });
    const [high, low] = await boundsBy(closer(1));
    expect(high).toBeLessThan(0.95 * exact);
    expect(low).toBeCloseTo(exact, 3);
    // Nor is it looked at once the time is over.
    const master = new BandMaster(ground);
    const plan = await solveLinear({ ...ground, pricer: closer(1.2), master, enough: () => false });
    master.close();
    const over = { ...ground, pricer: closer(1), deadline: { left: () => 0 } };
    expect(closerBound(over, plan)).toBe(plan.bound);
    // What is no closer makes it no worse.
    const [before, after] = await boundsBy(closer(1.2));
    expect(after).toBe(before);
  });

  it('stops at its limits with a bound that holds, and counts what it has solved', async () => {
    const { ground } = groundOf(
      barProblem(100, [
        [45, 97],
        [36, 610],
        [31, 395],
      ]),
    );
    const master = new BandMaster(ground);
    const over = { ...ground, deadline: { left: () => 0 } };
    const none = await solveLinear({ ...over, master, enough: () => false });
    expect(none).toMatchObject({ rounds: 0, finished: false, answer: undefined });
    expect(none.bound.scaled).toBe(0);
    const one = await solveLinear({ ...ground, master, enough: () => false, mostRounds: 1 });
    expect(one).toMatchObject({ rounds: 1, finished: false });
    const soon = await solveLinear({ ...ground, master, enough: (scaled) => scaled > 0 });
    expect(soon.finished).toBe(true);
    expect(soon.bound.scaled).toBeGreaterThan(0);
    master.close();
  });
});
