import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { guideOf } from './guide.js';

const EPSILON = 1e-3;

describe('guideOf', () => {
  it('tells what the linear plan pays for: pieces by what they are worth, patterns of a sheet by what they waste', async () => {
    const seen = { wasteful: 0, used: 0, unlike: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind({ offcuts: true }, SMALL), async (drawn) => {
        const { ground, start } = groundOf({ ...drawn, keep: [] });
        if (start === undefined) return;
        for (const { pattern } of start) ground.book.addPattern(pattern);
        const master = new BandMaster(ground);
        const root = await solveLinear({ ...ground, master, enough: () => false });
        master.close();
        const { answer } = root;
        const duals = answer?.duals;
        if (answer === undefined || duals === undefined) throw new Error('no linear plan');
        const { weights, losses, waste, likely } = guideOf(ground, root);

        // In proportion to what they are worth, none of them for nothing, the dearest at 1001.
        const worth = ground.demand.map(
          (_, piece) => root.bound.multipliers.pieces[piece] / ground.scale,
        );
        const dearest = Math.max(...worth);
        if (dearest > EPSILON) {
          expect(Math.max(...weights)).toBe(1001);
          weights.forEach((weight, piece) => {
            expect(Math.abs(weight - (1 + (1000 * worth[piece]) / dearest))).toBeLessThan(0.51);
            expect(losses[piece]).toBeGreaterThan(worth[piece]);
          });
          if (new Set(weights).size > 1) seen.unlike++;
        }

        // Of one sheet, the pattern whose pieces are worth most wastes least, and by as much.
        const priced = ground.pricer.price(root.bound.multipliers.pieces, 0);
        ground.classes.forEach((_, g) => {
          const [best] = [...priced.patterns(g)].sort((a, b) => b.worth - a.worth);
          if (best === undefined) return;
          for (const { pattern } of start.filter((own) => own.pattern.stockClass === g)) {
            const less = pattern.counts.reduce(
              (sum, [piece, copies]) => sum - copies * worth[piece],
              best.worth / ground.scale,
            );
            expect(waste(pattern) - waste(best.pattern)).toBeCloseTo(less, 6);
            if (less > EPSILON) seen.wasteful++;
          }
        });

        // What the linear plan uses is likely to be of use.
        answer.bands.forEach((amount, band) => {
          if (amount > EPSILON) expect(likely.bands).toContain(band);
        });
        answer.sheets.forEach((amount, sheet) => {
          if (amount > EPSILON) {
            seen.used++;
            expect(likely.sheets).toContain(sheet);
          }
        });
      }),
      { numRuns: 60 },
    );
    expect(seen.wasteful).toBeGreaterThan(20);
    expect(seen.used).toBeGreaterThan(20);
    expect(seen.unlike).toBeGreaterThan(10);
  });
});
