import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { money, totalCost } from '../master/objective.js';
import { seededRandom } from '../random.js';
import { LARGE, randomOfKind } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './planned.js';
import { missingWeight, Refiller, refillRest } from './refill.js';

const features = { stages: 'any', kerf: true, limitedStock: true, offcuts: true } as const;
const size = { ...LARGE, total: 60, pieceTypes: 5 };

describe('refilling', () => {
  it('keeps to its cost and to the stock, and never lacks more than before', async () => {
    const seen = { tight: 0, whole: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind(features, size),
        fc.integer({ min: 0, max: 120 }),
        fc.nat(1000),
        async (problem, percent, seed) => {
          const { ground, start } = groundOf(problem);
          if (start === undefined) return;
          const cost = (planned: readonly Planned[]) =>
            totalCost(ground.classes, sheetsUsed(planned, ground.classes.length), money) -
            keptCoins(planned);
          const atMost = Math.floor((cost(start) * percent) / 100);
          const weights = ground.demand.map((_, i) => 1 + i);
          const guide = {
            weights,
            losses: weights.map((weight) => 100 * weight),
            likely: { book: ground.book, bands: [], sheets: [] },
            waste: () => 0,
          };
          const first = await refillRest(ground, guide, [], atMost, {
            seeds: [],
            cutoff: undefined,
          });
          expect(cost(first.planned)).toBeLessThanOrEqual(atMost);
          const lacking = demandLeft(ground.demand, first.planned);
          expect(first.missing).toBe(missingWeight(ground.demand, first.planned, weights));
          expect(first.missing).toBe(lacking.reduce((sum, n, i) => sum + n * weights[i], 0));
          const refiller = new Refiller(ground, guide, atMost, seededRandom(seed));
          let partial: { planned: readonly Planned[]; missing: number } = first;
          for (let step = 0; step < 4; step++) {
            const next = await refiller.step(partial);
            expect(next.missing).toBeLessThanOrEqual(partial.missing);
            expect(next.missing).toBe(missingWeight(ground.demand, next.planned, weights));
            expect(cost(next.planned)).toBeLessThanOrEqual(atMost);
            partial = next;
          }
          if (partial.missing > 0) seen.tight++;
          else seen.whole++;
        },
      ),
      { numRuns: 40 },
    );
    expect(seen.tight).toBeGreaterThan(3);
    expect(seen.whole).toBeGreaterThan(3);
  });
});
