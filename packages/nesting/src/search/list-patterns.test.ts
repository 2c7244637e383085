import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BandBook } from '../master/band-book.js';
import { BandMaster } from '../master/band-master.js';
import { randomOfKind } from '../random-kinds.test.support.js';
import { listPatterns } from './list-patterns.js';
import { manyOfEach, rooted, stockOfAllKinds } from './rooted.test.support.js';

describe('listing patterns by a linear plan that counts spare pieces', () => {
  it('leaves as much room as the plan that it came of, with no worse patterns', async () => {
    const seen = { listed: 0, room: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind(stockOfAllKinds, manyOfEach), async (problem) => {
        const set = await rooted(problem, 105);
        if (set === undefined) return;
        const { ground, request } = set;
        const { pool, caps, losses } = request;
        const { demand, classes, engines } = ground;
        const planOf = async (book: BandBook) => {
          const master = new BandMaster({
            demand,
            classes,
            objective: { cost: undefined, caps },
            penalties: losses,
            spare: demand.map(() => 1),
            book,
            engines,
          });
          try {
            master.addFromBook();
            const answer = await master.solve({ integer: false, seconds: 10 });
            return typeof answer === 'string' ? undefined : answer;
          } finally {
            master.close();
          }
        };
        const answer = await planOf(pool);
        if (answer === undefined) return;
        const listed = listPatterns(ground, { pool, caps, losses, classes, answer, most: 40_000 });
        if (listed === undefined) return;
        seen.listed++;
        if (answer.cost < 0) seen.room++;
        const again = await planOf(listed);
        expect(again?.cost ?? Number.NaN).toBeLessThanOrEqual(answer.cost + 1e-6);
        const ofStock = classes.map(
          (_, box) => listed.sheets.filter((sheet) => sheet.box === box).length,
        );
        expect(Math.max(...ofStock)).toBeLessThanOrEqual(600);
      }),
      { numRuns: 20 },
    );
    expect(seen.listed).toBeGreaterThan(8);
    expect(seen.room).toBeGreaterThan(4);
  });
});
