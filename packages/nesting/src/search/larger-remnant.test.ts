import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import type { KeepRule } from '../problem.js';
import type { PlansWithoutValue } from './ground.js';
import { groundOf } from './ground.test.support.js';
import { Incumbent } from './incumbent.js';
import { leaveLargerRemnant } from './larger-remnant.js';

const KEEP: KeepRule = { leastLength: 10, leastWidth: 5, coinsPerMillion: 20_000 };

/**
 * Seeks a larger remnant of a plan for 1000 coins, the bound of which is 900, where one worth so much can
 * be had, and one that is found is worth so many coins more than was asked for.
 */
async function sought(most: number, more = 0, seconds = 1e6, dearer = 0) {
  const { ground, start } = groundOf({
    pieces: [piece('a', 40, 40, 1)],
    stock: [sheet('s', 100, 50, { price: 1000 })],
    shear: { firstCut: 'either' },
    keep: [KEEP],
  });
  if (start === undefined) throw new Error('no first plan');
  const asked: number[] = [];
  const withoutValue: PlansWithoutValue = {
    plan: async () => undefined,
    leaving: async (coins, planned) => {
      asked.push(coins);
      if (coins > most) return undefined;
      const kept = Math.min(most, coins + more) - dearer;
      return planned.map(({ pattern, count }) => ({ pattern: { ...pattern, kept }, count }));
    },
  };
  const incumbent = new Incumbent(ground, {});
  incumbent.offer(start.map(({ pattern, count }) => ({ pattern: { ...pattern, kept: 0 }, count })));
  expect(incumbent.cost).toBe(1000);
  incumbent.raise(900 * ground.scale);
  const deadline = { left: () => seconds };
  await leaveLargerRemnant({ ...ground, withoutValue, deadline }, incumbent);
  return { asked, cost: incumbent.cost };
}

describe('a larger remnant', () => {
  it('is sought between one that was found and one that was not', async () => {
    expect(await sought(100)).toEqual({ asked: [40, 70, 85, 93], cost: 907 });
    expect(await sought(0)).toEqual({ asked: [40, 20, 10], cost: 1000 });
    const { asked, cost } = await sought(60);
    expect(asked).toEqual([40, 70, 55, 63]);
    expect(cost).toBe(945);
  });

  it('counts for as much as it came out to be worth', async () => {
    expect(await sought(60, 15)).toEqual({ asked: [40, 78, 67, 61], cost: 945 });
    expect(await sought(100, 100)).toEqual({ asked: [40], cost: 900 });
  });

  it('is sought still larger where the plan with it takes more of the rack', async () => {
    expect(await sought(100, 0, 1e6, 5)).toEqual({ asked: [40, 70, 85, 93], cost: 912 });
  });

  it('is not sought without time', async () => {
    expect(await sought(100, 0, 0)).toEqual({ asked: [], cost: 1000 });
  });
});
