import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_EFFORT } from '../box-solver/effort.js';
import { expectBest, expectNotTooLittle } from '../box-solver/expect-best.test.support.js';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { FreePricer } from '../free-guillotine/free-pricer.js';
import { ThreeStagePricer } from './three-stage-pricer.js';
import type { TriedSizes } from './whole-bands.js';

const three = { stages: 3, pricer: ThreeStagePricer } as const;

describe('ThreeStagePricer', () => {
  it('finds what trying every cut finds, whatever the kerf and the longest cut', () => {
    fc.assert(
      fc.property(boxCase({ most: 16 }), (drawn) => expectBest(drawn, three)),
      { numRuns: 300 },
    );
  });

  it('finds what trying every cut finds where no strip may be too narrow', () => {
    fc.assert(
      fc.property(boxCase({ most: 16, narrowest: true }), (drawn) => expectBest(drawn, three)),
      { numRuns: 300 },
    );
  });

  it('finds what trying every cut finds where remnants are worth keeping', () => {
    fc.assert(
      fc.property(boxCase({ most: 16, narrowest: true, keep: true }), (drawn) =>
        expectBest(drawn, three),
      ),
      { numRuns: 300 },
    );
  });

  it('finds patterns that are worth what it says where few sizes of bands and sections are tried', () => {
    const seen = { all: 0, less: 0 };
    fc.assert(
      fc.property(
        boxCase({ most: 40, narrowest: true, keep: true }),
        ({ box, limits, values, coin, rule }) => {
          const priced = (heights: TriedSizes) =>
            new ThreeStagePricer([box], limits, [rule], DEFAULT_EFFORT, () => false, heights).price(
              values,
              coin,
            );
          const [every] = priced('every').worth;
          const few = priced('few');
          expect(few.worth[0]).toBeLessThanOrEqual(every);
          for (const { pattern, worth } of few.patterns(0)) {
            const own = pattern.counts.reduce(
              (sum, [piece, copies]) => sum + values[piece] * copies,
              coin * pattern.kept,
            );
            expect(own).toBeGreaterThanOrEqual(worth);
          }
          seen[few.worth[0] === every ? 'all' : 'less']++;
        },
      ),
      { numRuns: 2000 },
    );
    expect(seen.all).toBeGreaterThan(1000);
    expect(seen.less).toBeGreaterThan(30);
  });

  it('is worth no more than free cuts, and as much where three stages are enough', () => {
    let enough = 0;
    fc.assert(
      fc.property(boxCase({ most: 60 }), ({ box, limits, values }) => {
        const [three] = new ThreeStagePricer([box], limits).price(values, 0).worth;
        const [free] = new FreePricer([box], limits).price(values, 0).worth;
        expect(three).toBeLessThanOrEqual(free);
        if (three === free && free > 0) enough++;
      }),
    );
    expect(enough).toBeGreaterThan(30);
  });

  it('is never worth too little where there is no room for exactness', () => {
    expectNotTooLittle(three, 500);
  });
});
