import { describe, expect, it } from 'vitest';
import { copiesOf, either, piece, planned, sheet } from './plan-cutting.test.support.js';
import type { CuttingProblem } from './problem.js';
import { verifyPlan } from './verify/verify-plan.js';

const MILLION = 1_000_000;
/** About half of what the large sheet costs by area, in coins of the test. */
const KEEP = { leastLength: 400, leastWidth: 100, coinsPerMillion: 6 };

describe('orders as large as they may be', () => {
  it.each([2, 3, 'free'] as const)(
    'a million of each of several pieces, with stages %s',
    async (stages) => {
      const problem: CuttingProblem = {
        pieces: [
          piece('a', 37, 5, MILLION),
          piece('b', 29, 4, MILLION),
          piece('c', 18, 7, MILLION),
          piece('d', 11, 9, MILLION),
          piece('e', 23, 3, MILLION - 1),
        ],
        stock: [sheet('s', 90, 60, { price: 7 }), sheet('t', 60, 45, { price: 4 })],
        shear: { ...either, stages },
      };
      const plan = await planned(problem, { timeLimitSeconds: 4 });
      expect(verifyPlan(problem, plan)).toEqual([]);
      expect(copiesOf('e', plan.layouts)).toBe(MILLION - 1);
      // Rounding costs some sheets, whatever the quantities: hundreds of thousands of them are used.
      expect(plan.cost).toBeGreaterThan(500_000);
      expect(plan.cost - plan.bound.cost).toBeLessThan(plan.cost / 10_000);
      expect(plan.layouts.length).toBeLessThan(60);
    },
  );

  it('a million of one piece, one on each sheet, is one layout', async () => {
    const plan = await planned({
      pieces: [piece('a', 60, 40, MILLION)],
      stock: [sheet('s', 100, 50)],
      shear: either,
    });
    expect(plan.bound).toEqual({ cost: 100 * MILLION, proven: true });
    expect(plan.layouts).toHaveLength(1);
    expect(plan.layouts[0].count).toBe(MILLION);
  });

  it('sheets as large as may be, with pieces of all sizes, end with a verified plan', async () => {
    const problem: CuttingProblem = {
      pieces: Array.from({ length: 40 }, (_, i) =>
        piece(`${i}`, 1000 + i * 977, 500 + i * 331, 50 + i, { spares: 3 }),
      ),
      stock: [
        sheet('s', 200_000, 199_999, { price: 1_000_000 }),
        sheet('t', 120_000, 90_000, { price: 300_000, packSize: 10 }),
      ],
      shear: { ...either, kerf: 3, trim: 100, narrowestStrip: 40 },
    };
    const plan = await planned(problem, { timeLimitSeconds: 2 });
    expect(verifyPlan(problem, plan)).toEqual([]);
    expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
  });

  it.each([2, 3, 'free'] as const)(
    'the finest ticks, and a kerf of hundreds of them, end with a verified plan, with stages %s',
    async (stages) => {
      const pieces = Array.from({ length: 100 }, (_, i) =>
        piece(`${i}`, 20_000 + ((i * 1371) % 100_000), 4_400 + ((i * 613) % 6_600), 5 + (i % 46)),
      );
      const offcuts = Array.from({ length: 12 }, (_, i) => ({
        kind: 'offcut' as const,
        id: `o${i}`,
        length: 30_000 + i * 7_001,
        width: 6_000 + i * 5_003,
      }));
      const problem: CuttingProblem = {
        pieces,
        stock: [
          sheet('s', 200_000, 128_000, { price: 1150 }),
          sheet('t', 142_400, 102_400, { price: 690 }),
          ...offcuts,
        ],
        shear: { ...either, stages, kerf: 200, narrowestStrip: 2000 },
      };
      const plan = await planned(problem, { timeLimitSeconds: 3 });
      expect(verifyPlan(problem, plan)).toEqual([]);
      expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
      expect(plan.bound.cost).toBeGreaterThan(0.8 * plan.cost);
    },
  );

  it.each([
    { stages: 2, keep: [] },
    { stages: 3, keep: [] },
    { stages: 'free', keep: [{ leastLength: 300, leastWidth: 100, coinsPerMillion: 40 }] },
  ] as const)(
    'thousands of offcuts end with a verified plan, with stages $stages',
    async ({ stages, keep }) => {
      const problem: CuttingProblem = {
        pieces: Array.from({ length: 120 }, (_, i) =>
          piece(`${i}`, 100 + ((i * 137) % 1400), 30 + ((i * 61) % 570), 1 + (i % 9)),
        ),
        stock: [
          sheet('s', 2000, 1280, { price: 1150 }),
          ...Array.from({ length: 2000 }, (_, i) => ({
            kind: 'offcut' as const,
            id: `o${i}`,
            length: 300 + ((i * 389) % 800),
            width: 60 + ((i * 227) % 640),
            bookValue: 40,
          })),
        ],
        shear: { ...either, stages },
        keep,
      };
      const plan = await planned(problem, { timeLimitSeconds: 3 });
      expect(verifyPlan(problem, plan)).toEqual([]);
      expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
      expect(plan.bound.cost).toBeGreaterThan(0);
    },
  );

  it.each([
    { kind: 'shears', own: {} },
    { kind: 'shears, in three stages', own: { shear: { ...either, stages: 3 } } },
    { kind: 'a saw', own: { shear: { ...either, kerf: 3, narrowestStrip: 30 } } },
    { kind: 'shears, remnants kept', own: { keep: [KEEP] } },
    {
      kind: 'shears, freely, remnants kept',
      own: { shear: { ...either, stages: 'free' }, keep: [KEEP] },
    },
    {
      kind: 'a saw, remnants kept',
      own: { shear: { ...either, kerf: 3, narrowestStrip: 30 }, keep: [KEEP] },
    },
  ] as const)('hundreds of sizes end with a verified plan, by $kind', async ({ own }) => {
    const problem: CuttingProblem = {
      pieces: Array.from({ length: 400 }, (_, i) =>
        piece(`${i}`, 200 + ((i * 137) % 1800), 40 + ((i * 61) % 500), 1 + (i % 200)),
      ),
      stock: [sheet('s', 4000, 2000), sheet('t', 2440, 1220, { price: 40 })],
      shear: either,
      ...own,
    };
    const plan = await planned(problem, { timeLimitSeconds: 2 });
    expect(verifyPlan(problem, plan)).toEqual([]);
    const area = problem.pieces.reduce((sum, p) => sum + p.length * p.width * p.quantity, 0);
    // The large sheet gives the most metal for a coin: 4000 x 2000 for 100.
    expect(plan.cost).toBeGreaterThanOrEqual(area / 80_000);
    expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
    // So much is known at once, by area; a kerf only adds to it.
    expect(plan.bound.cost).toBeGreaterThanOrEqual(Math.floor(area / 80_000));
    // By the rule of thumb alone, if there was time for no more.
    expect(plan.bound.cost).toBeGreaterThan(0.8 * plan.cost);
  });
});
