import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { openBands } from './broken-bands.js';
import { settleLastBands } from './settle-last-bands.js';
import { settleMostBands } from './settle-most-bands.js';
import { fewestSheets, opened, orders, SLOTS, total } from './settled-sheets.test.support.js';

const FEW_OPEN = 7;
const never = () => false;

describe('settling the last bands', () => {
  it('gives all that is wanted where most were settled and there is room', async () => {
    let settledInAll = 0;
    await fc.assert(
      fc.asyncProperty(orders, async (order) => {
        const sheets = (await fewestSheets(order)) + 1;
        const { ground, book, classes, master, start } = await opened(order, sheets);
        try {
          const answer = await settleMostBands(master, start, seededRandom(order.seed), never);
          const settled = [...master.bands].map((count) => count ?? 0);
          expect(openBands(master, answer)).toBeLessThanOrEqual(FEW_OPEN + 1e-6);
          expect(total(settled)).toBeLessThanOrEqual(sheets * SLOTS);
          settled.forEach((count, band) => {
            expect(answer.bands[band]).toBeGreaterThanOrEqual(count - 1e-6);
          });
          settledInAll += total(settled);
          const { duals } = answer;
          if (duals === undefined) throw new Error('a linear plan has duals');
          const { demand } = ground;
          const request = { classes, caps: [], weights: demand.map(() => 1), book };
          const cut = await settleLastBands(
            ground,
            { ...request, sheets: [sheets], duals },
            master,
          );
          if (cut === undefined) throw new Error('there is room for a whole sheet more');
          expect(total(cut.bands)).toBeLessThanOrEqual(sheets * SLOTS);
          settled.forEach((count, band) => {
            const at = cut.book.bands.findIndex(
              ({ counts }) => String(counts) === String(book.bands[band].counts),
            );
            if (count > 0) expect(cut.bands[at]).toBeGreaterThanOrEqual(count);
          });
          demand.forEach((wanted, piece) => {
            const copies = cut.book.bands.map(
              ({ counts }) => counts.find(([of]) => of === piece)?.[1] ?? 0,
            );
            const given = copies.reduce((sum, each, band) => sum + each * cut.bands[band], 0);
            expect(given).toBeGreaterThanOrEqual(wanted);
          });
        } finally {
          master.close();
        }
      }),
      { numRuns: 25 },
    );
    expect(settledInAll).toBeGreaterThan(100);
  });
});
