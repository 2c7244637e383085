import { describe, expect, it } from 'vitest';
import type { BandAnswer } from '../master/band-master.js';
import { settleOneBand } from './settle-one-band.js';

const LIMITS = { tried: 3, little: 0.1, rounds: 2 };

const answerOf = (cost: number): BandAnswer => ({
  status: 'optimal',
  cost,
  sheets: [],
  bands: [],
  supplies: [],
  short: [],
  duals: undefined,
});

/** A master whose linear plan costs so much with one of each band settled; undefined for none. */
function masterOf(costs: readonly (number | undefined)[]) {
  const settled = costs.map(() => 0);
  const asked: number[] = [];
  return {
    settled,
    asked,
    settleBand: (band: number, count: number) => {
      settled[band] += count;
    },
    solve: async () => {
      const band = settled.indexOf(1);
      asked.push(band);
      const cost = costs[band];
      return cost === undefined ? undefined : answerOf(cost);
    },
  };
}

describe('settling one band', () => {
  it('takes the first that loses next to nothing', async () => {
    const master = masterOf([5, 1.05, 1]);
    const next = await settleOneBand(master, answerOf(1), [0, 1, 2], LIMITS);
    expect(next?.cost).toBe(1.05);
    expect(master.settled).toEqual([0, 1, 0]);
    expect(master.asked).toEqual([0, 1]);
  });

  it('takes the one that loses least where all lose, of so many as may be tried', async () => {
    const master = masterOf([5, 3, 4, 2]);
    const next = await settleOneBand(master, answerOf(1), [0, 1, 2, 3], LIMITS);
    expect(next?.cost).toBe(3);
    expect(master.settled).toEqual([0, 1, 0, 0]);
    expect(master.asked).toEqual([0, 1, 2]);
  });

  it('settles none where there is no linear plan with any', async () => {
    const master = masterOf([undefined, undefined]);
    expect(await settleOneBand(master, answerOf(1), [1, 0], LIMITS)).toBeUndefined();
    expect(await settleOneBand(master, answerOf(1), [], LIMITS)).toBeUndefined();
    expect(master.settled).toEqual([0, 0]);
  });
});
