import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';
import { rootPlan } from './root-plan.js';

const problem = {
  pieces: [piece('a', 31, 12, 9), piece('b', 22, 17, 7), piece('c', 41, 9, 5)],
  stock: [sheet('s', 100, 60), offcut('A', 50, 40)],
  shear: { firstCut: 'either', stages: 3 },
} as const;

/** The root where time is over after so many pricings. */
async function rootWithin(most: number) {
  const { ground, start } = groundOf(problem);
  for (const { pattern } of start ?? []) ground.book.addPattern(pattern);
  let asked = 0;
  const counted = (pricer: PatternPricer): PatternPricer => ({
    price: (...values) => {
      asked++;
      return pricer.price(...values);
    },
  });
  const set = {
    ...ground,
    pricer: counted(ground.pricer),
    inTurn: ground.inTurn.map(counted),
    deadline: { left: () => (asked < most ? 60 : 0) },
  };
  const master = new BandMaster(set);
  let slow = 0;
  const onSlow = async () => {
    slow++;
  };
  try {
    const { finished } = await rootPlan(set, master, () => false, onSlow);
    return { finished, slow, asked };
  } finally {
    master.close();
  }
}

describe('rootPlan', () => {
  it('tells once where time was not enough, and not where it was', async () => {
    const whole = await rootWithin(Number.POSITIVE_INFINITY);
    expect(whole).toMatchObject({ finished: true, slow: 0 });
    expect(whole.asked).toBeGreaterThan(3);
    for (const most of [1, whole.asked - 1]) {
      expect(await rootWithin(most)).toEqual({ finished: false, slow: 1, asked: most });
    }
  });

  it('is bounded by rough patterns where all patterns of the kind take long to price', async () => {
    const keep = [{ leastLength: 30, leastWidth: 10, coinsPerMillion: 8_000, trouble: 2 }];
    const { ground, start } = groundOf({ ...problem, keep });
    for (const { pattern } of start ?? []) ground.book.addPattern(pattern);
    const never: PatternPricer = {
      price: () => {
        throw new Error('all patterns of the kind were priced');
      },
    };
    const set = { ...ground, pricer: never, inTurn: [...ground.inTurn.slice(0, -1), never] };
    const roots = await Promise.all(
      [set, { ...ground, rough: undefined }].map(async (own) => {
        const master = new BandMaster(own);
        try {
          return await rootPlan(
            own,
            master,
            () => false,
            async () => {},
          );
        } finally {
          master.close();
        }
      }),
    );
    const [rough, exact] = roots.map(({ bound }) => bound.scaled / ground.scale);
    expect(rough).toBeGreaterThan(0.8 * exact);
    expect(rough).toBeLessThanOrEqual(exact + 1e-6);
  });
});
