import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandAnswer } from '../master/band-master.js';
import { seededRandom } from '../random.js';
import { settleMostBands } from './settle-most-bands.js';
import { fewestSheets, opened, orders, total } from './settled-sheets.test.support.js';

const never = () => false;

/** A master whose linear plan has always the same bands, and costs what the settled ones make it cost. */
function masterOf(amounts: readonly number[], costOf: (settled: readonly number[]) => number) {
  const bands = amounts.map(() => 0);
  const answer = (): BandAnswer => ({
    status: 'optimal',
    cost: costOf(bands),
    bands: amounts,
    sheets: [],
    supplies: [],
    short: [],
    duals: undefined,
  });
  return {
    bands,
    answer,
    settleBand: (band: number, count: number) => {
      bands[band] += count;
    },
    solve: async () => answer(),
  };
}

describe('settling most bands', () => {
  it('takes back whole numbers of a band that use up too much of the room', async () => {
    const master = masterOf([9, 12], ([first]) => (first > 2 ? -0.5 : -1));
    const answer = await settleMostBands(master, master.answer(), seededRandom(1), never);
    expect(master.bands).toEqual([2, 12]);
    expect(answer.cost).toBe(-1);
  });

  it('breaks up no further what would lack too much', async () => {
    const master = masterOf([20.5, 0.5], ([first, second]) => first + second - 3);
    const answer = await settleMostBands(master, master.answer(), seededRandom(1), never);
    expect(answer.cost).toBe(0);
  });

  it('settles nothing that leaves far too little, and nothing once it is over', async () => {
    await fc.assert(
      fc.asyncProperty(orders, async (order) => {
        const fewest = await fewestSheets(order);
        const { master, start } = await opened(order, fewest);
        try {
          const random = seededRandom(order.seed);
          expect(await settleMostBands(master, start, random, () => true)).toBe(start);
          expect(total(master.bands)).toBe(0);
          const answer = await settleMostBands(master, start, random, never);
          // Either few are open, or it stopped before more than half of a measure of pieces lacks.
          expect(answer.cost).toBeLessThanOrEqual(0.6);
        } finally {
          master.close();
        }
      }),
      { numRuns: 25 },
    );
  });
});
