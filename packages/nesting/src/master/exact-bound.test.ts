import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingPlan } from '../plan.js';
import { planCutting } from '../plan-cutting.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { groundOf } from '../search/ground.test.support.js';
import { coinWorth, exactBound, exactScale, type Multipliers } from './exact-bound.js';
import { leastMetal, leastMoney, metal, type Objective } from './objective.js';
import type { StockClass } from './stock-class.js';

const features = {
  stages: 'any',
  kerf: true,
  limitedStock: true,
  offcuts: true,
  bookValues: true,
  keep: true,
  packs: true,
} as const;

const SCALE = 1024;

/** Sheets that a plan takes of each supply, in the order of the supplies. */
function taken(plan: CuttingPlan, classes: readonly StockClass[]): readonly (readonly number[])[] {
  const used = new Map<string, number>();
  for (const { stock, count } of plan.layouts) used.set(stock, (used.get(stock) ?? 0) + count);
  return classes.map(({ supplies }) =>
    supplies.map(({ stock, count }) => {
      const left = used.get(stock) ?? 0;
      const some = Math.min(left, count);
      used.set(stock, left - some);
      return some;
    }),
  );
}

describe('exactBound', () => {
  it('is never above the cost of a plan, whatever the multipliers and the branches it is in', async () => {
    const seen = { above0: 0, kept: 0, branched: 0, metal: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind(features, SMALL),
        fc.array(fc.integer({ min: 0, max: 12 * SCALE }), { minLength: 4, maxLength: 4 }),
        fc.constantFrom<'plain' | 'branched' | 'metal'>('plain', 'branched', 'metal'),
        fc.integer({ min: 0, max: SCALE }),
        async (problem, values, way, capMultiplier) => {
          const outcome = await planCutting(problem, { timeLimitSeconds: 0.05 });
          if (outcome.status !== 'planned') return;
          const { plan } = outcome;
          const objective: Objective = way === 'metal' ? leastMetal(plan.cost) : leastMoney;
          const { ground } = groundOf(problem, objective);
          const used = taken(plan, ground.classes);
          const classes =
            way !== 'branched'
              ? ground.classes
              : ground.classes.map((entry, g) => ({
                  ...entry,
                  supplies: entry.supplies.map((supply, t) => {
                    // The plan is in the branch where so much is paid for at least and at most.
                    const paid = Math.ceil(used[g][t] / supply.unit) * supply.unit;
                    return values[t % 4] % 2 === 0
                      ? { ...supply, least: paid }
                      : { ...supply, count: paid };
                  }),
                }));
          const multipliers: Multipliers = {
            scale: SCALE,
            pieces: Float64Array.from(ground.demand, (_, i) => values[i]),
            caps: objective.caps.map(() => capMultiplier),
          };
          const coin = coinWorth(objective, multipliers);
          const { worth } = ground.pricer.price(multipliers.pieces, coin);
          const bound = exactBound(
            worth,
            ground.keptAtMost,
            classes,
            ground.demand,
            objective,
            multipliers,
          );
          const cost =
            way === 'metal'
              ? used.reduce(
                  (sum, counts, g) =>
                    counts.reduce(
                      (part, n, t) => part + n * metal.of(ground.classes[g].supplies[t]),
                      sum,
                    ),
                  0,
                )
              : plan.cost;
          expect(Number.isInteger(bound.scaled)).toBe(true);
          expect(bound.scaled).toBeLessThanOrEqual(cost * SCALE);
          if (bound.scaled <= 0) return;
          seen.above0++;
          if (plan.parts.kept > 0) seen.kept++;
          if (way !== 'plain') seen[way]++;
        },
      ),
      { numRuns: 250 },
    );
    // A bound that is 0 or less proves nothing; enough of them must say something.
    expect(seen.above0).toBeGreaterThan(60);
    expect(seen.kept).toBeGreaterThan(10);
    expect(seen.branched).toBeGreaterThan(10);
    expect(seen.metal).toBeGreaterThan(10);
  });

  /** One sheet of 100 coins to be had without end, of 10 x 10. */
  const classes = (least = 0): readonly StockClass[] => [
    {
      box: { length: 10, width: 10, firstCuts: ['along'], lays: [] },
      supplies: [
        {
          stock: 's',
          count: Number.POSITIVE_INFINITY,
          least,
          unit: 1,
          price: 100,
          bought: true,
          leftOver: 0,
          charge: 1000,
        },
      ],
    },
  ];
  const scaledBound = (worth: number, kept: number, value: number, least = 0) =>
    exactBound([worth], [kept], classes(least), [8], leastMoney, {
      scale: SCALE,
      pieces: Float64Array.of(value),
      caps: [],
    }).scaled / SCALE;

  it('takes values as they are while no sheet is worth more than it costs', () => {
    // 8 pieces of 20 coins, 5 on a sheet.
    expect(scaledBound(100 * SCALE, 0, 20 * SCALE)).toBe(160);
    expect(scaledBound(60 * SCALE, 0, 12 * SCALE)).toBe(96);
  });

  it('shrinks values until no sheet gains, less where part of the worth is for remnants', () => {
    // Worth 200 at 40 coins for a piece: halved, but for the safety of rounding.
    expect(scaledBound(200 * SCALE, 0, 40 * SCALE)).toBeCloseTo(160, 1);
    expect(scaledBound(200 * SCALE, 0, 40 * SCALE)).toBeLessThanOrEqual(160);
    // At most 50 of the 200 are for remnants: those do not shrink, so the rest does by (100 - 50) / (200 - 50).
    expect(scaledBound(200 * SCALE, 50, 40 * SCALE)).toBeCloseTo(320 / 3, 1);
    expect(scaledBound(200 * SCALE, 50, 40 * SCALE)).toBeLessThanOrEqual(320 / 3);
  });

  it('shrinks the gain of limited sheets alike, but not what is for their remnants', () => {
    const [endless] = classes();
    const limited = { ...endless, supplies: [{ ...endless.supplies[0], count: 3 }] };
    const bound = exactBound(
      [200 * SCALE, 200 * SCALE],
      [0, 150],
      [endless, limited],
      [8],
      leastMoney,
      { scale: SCALE, pieces: Float64Array.of(40 * SCALE), caps: [] },
    );
    // Values are halved: 8 pieces of 20. Each of three sheets is worth 150 + 50 / 2, 75 more than it costs.
    expect(bound.scaled / SCALE).toBeCloseTo(160 - 3 * 75, 1);
  });

  it('takes off what a cap allows at its multiplier', () => {
    const multipliers = { scale: SCALE, pieces: Float64Array.of(100 * SCALE), caps: [2 * SCALE] };
    const bound = (coins: number) =>
      exactBound([1000 * SCALE], [0], classes(), [8], leastMetal(coins), multipliers).scaled;
    // A sheet costs 1000 of metal and 100 coins at 2 each; the 8 pieces are worth 800.
    expect(bound(300) / SCALE).toBe(800 - 2 * 300);
    expect(bound(0) / SCALE).toBe(800);
  });

  it('adds what sheets that must be paid for cost beyond their worth', () => {
    // Four sheets are 400 coins; at 12 coins for a piece each is worth 60.
    expect(scaledBound(60 * SCALE, 0, 12 * SCALE, 4)).toBe(96 + 4 * 40);
    expect(scaledBound(100 * SCALE, 0, 20 * SCALE, 4)).toBe(160);
  });

  it('counts what a whole sheet is worth only where a piece is worth nothing', () => {
    const bound = (other: number) =>
      exactBound([60 * SCALE], [97], classes(4), [8, 1], leastMoney, {
        scale: SCALE,
        pieces: Float64Array.of(12 * SCALE, other * SCALE),
        caps: [],
      }).scaled / SCALE;
    expect(bound(5)).toBe(96 + 5 + 4 * 40);
    // Four sheets could be cut for such pieces alone, and leave 97 each.
    expect(bound(0)).toBe(96 + 4 * 3);
  });
});

describe('exactScale', () => {
  it('is the finest power of two that keeps sums exact', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e12 }), (cost) => {
        const scale = exactScale(cost);
        expect(Math.log2(scale) % 1).toBe(0);
        expect(cost * scale * 4).toBeLessThanOrEqual(2 ** 52);
        if (scale < 2 ** 30) expect(cost * scale * 8).toBeGreaterThan(2 ** 52);
      }),
    );
  });
});
