import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import { LARGE, randomOfKind } from '../random-kinds.test.support.js';
import { groundOf } from '../search/ground.test.support.js';
import { keptCoins, sheetsUsed } from '../search/planned.js';
import { areaBound } from './area-bound.js';
import { money, totalCost } from './objective.js';

const features = {
  stages: 'any',
  kerf: true,
  trim: true,
  narrowestStrip: true,
  limitedStock: true,
  offcuts: true,
  keep: true,
  packs: true,
} as const;

describe('areaBound', () => {
  it('is what the metal of the pieces costs, bought where it is cheapest', () => {
    const { ground } = groundOf({
      pieces: [piece('a', 50, 20, 7), piece('b', 25, 16, 4)],
      stock: [sheet('dear', 100, 20, { price: 70 }), sheet('fair', 100, 40, { price: 100 })],
      shear: { firstCut: 'either' },
    });
    // 8,600 square ticks at 100 for 4,000.
    expect(areaBound(ground) / ground.scale).toBeCloseTo(215, 6);
  });

  it('counts cheap stock only as far as there is some', () => {
    const { ground } = groundOf({
      pieces: [piece('a', 50, 20, 7)],
      stock: [offcut('A', 60, 40), sheet('s', 100, 40, { price: 100 })],
      shear: { firstCut: 'either' },
    });
    // 2,400 of 7,000 square ticks for nothing.
    expect(areaBound(ground) / ground.scale).toBeCloseTo(115, 6);
  });

  it('minds what may be kept', () => {
    const { ground } = groundOf({
      pieces: [piece('a', 50, 20, 2)],
      stock: [sheet('s', 100, 40, { price: 100 })],
      shear: { firstCut: 'either' },
      keep: [{ leastLength: 10, leastWidth: 10, coinsPerMillion: 20_000 }],
    });
    // Half of one sheet, the other half worth 40: at least 50, and no more than the 60 it comes to.
    const bound = areaBound(ground) / ground.scale;
    expect(bound).toBeGreaterThan(49.9);
    expect(bound).toBeLessThanOrEqual(60);
  });

  it('is never above the cost of a plan', () => {
    let near = 0;
    let valued = 0;
    fc.assert(
      fc.property(randomOfKind(features, LARGE), (problem) => {
        const { ground, start } = groundOf(problem);
        if (start === undefined) return;
        const planned = ground.bare?.(start) ?? start;
        const { classes } = ground;
        const cost =
          totalCost(classes, sheetsUsed(planned, classes.length), money) - keptCoins(planned);
        const bound = areaBound(ground) / ground.scale;
        expect(bound).toBeLessThanOrEqual(cost);
        if (bound > cost / 2) near++;
        if (bound > cost / 2 && ground.keptPerTick > 0) valued++;
      }),
      { numRuns: 300 },
    );
    expect(near).toBeGreaterThan(30);
    expect(valued).toBeGreaterThan(5);
  });
});
