import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';
import { Incumbent } from './incumbent.js';
import { BoundRaising } from './raise-bound.js';

/** Seconds that pricing takes by a clock that nothing else moves. */
const SECONDS_EACH = 15;

/** Begins to raise the bound of an order of so many of each of some strips, within a hundred seconds. */
async function begun(quantity: number, kinds: number) {
  const { ground, start } = groundOf({
    pieces: [210, 305, 414, 333, 256, 387]
      .slice(0, kinds)
      .map((length, i) =>
        piece(`strip ${i}`, length, i % 2 === 0 ? 62 : 56, quantity, { mayTurn: true }),
      ),
    stock: [sheet('a', 1400, 1000, { price: 650 }), sheet('b', 1000, 700, { price: 350 })],
    shear: { firstCut: 'either', stages: 2 },
    keep: [{ leastLength: 360, leastWidth: 60, coinsPerMillion: 175, trouble: 5 }],
  });
  const lister = ground.stripLister();
  if (lister === undefined) throw new Error('strips cannot be listed');
  let seconds = 0;
  const slow = {
    ...ground,
    everyPattern: () => undefined,
    deadline: { left: () => 100 - seconds },
    stripLister: () => ({
      price: (...asked: Parameters<typeof lister.price>) => {
        seconds += SECONDS_EACH;
        return lister.price(...asked);
      },
      pattern: (...asked: Parameters<typeof lister.pattern>) => lister.pattern(...asked),
    }),
  };
  const incumbent = new Incumbent(slow, {});
  incumbent.offer(start);
  const master = new BandMaster(slow);
  const root = await solveLinear({ ...ground, master, enough: () => false });
  const raising = new BoundRaising(slow, incumbent, master, root, undefined);
  await raising.begin();
  master.close();
  return { seconds, proven: incumbent.met };
}

describe('raising the bound', () => {
  it('begins with what takes most of the time where there are few kinds and sheets', async () => {
    // All is looked through after three times.
    expect(await begun(16, 4)).toEqual({ seconds: 45, proven: true });
  });

  it('begins with a quarter of the time where there are few kinds, but more sheets', async () => {
    // The time is looked at before every other pricing.
    expect(await begun(50, 4)).toEqual({ seconds: 45, proven: false });
  });

  it('begins without searching numbers to the end where there are more kinds', async () => {
    expect(await begun(16, 6)).toEqual({ seconds: 0, proven: false });
  });
});
