import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOfEveryCut } from '../box-solver/every-cut.test.support.js';
import { measuredPattern } from '../box-solver/measured-pattern.js';
import { type BoxCase, boxCase } from '../box-solver/random-box.test.support.js';
import type { Pattern } from '../pattern/part.js';
import type { KeepRule } from '../problem.js';
import { FreePricer } from './free-pricer.js';

/** Prices a box, and compares with trying every cut at every tick. */
function expectBest({ box, limits, values, coin }: BoxCase, rule?: KeepRule): void {
  const priced = new FreePricer([box], limits, [rule]).price(values, coin);
  expect(priced.worth[0]).toBe(bestOfEveryCut(box, limits, values, coin, rule));
  const pattern = priced.pattern(0);
  if (pattern === undefined) {
    // Then remnants alone are worth as much.
    expect(priced.worth[0]).toBe(bestOfEveryCut({ ...box, lays: [] }, limits, values, coin, rule));
    return;
  }
  const measured = measuredPattern(pattern.part, 0, box, limits, rule);
  expect(measured.legal).toBe(true);
  expect(pattern.counts.length).toBeGreaterThan(0);
  expect(worthOf(pattern, values, coin)).toBe(priced.worth[0]);
}

function worthOf({ counts, kept }: Pattern, values: readonly number[], coin: number): number {
  return counts.reduce((sum, [piece, copies]) => sum + values[piece] * copies, coin * kept);
}

describe('FreePricer', () => {
  it('finds what trying every cut finds, whatever the kerf and the longest cut', () => {
    fc.assert(
      fc.property(boxCase(), (drawn) => expectBest(drawn)),
      { numRuns: 500 },
    );
  });

  it('finds what trying every cut finds where no strip may be too narrow', () => {
    fc.assert(
      fc.property(boxCase({ narrowest: true }), (drawn) => expectBest(drawn)),
      { numRuns: 500 },
    );
  });

  it('finds what trying every cut finds where remnants are worth keeping', () => {
    fc.assert(
      fc.property(boxCase({ narrowest: true }), (drawn) => expectBest(drawn, drawn.rule)),
      { numRuns: 500 },
    );
  });

  it('is never worth too little where there is no room for exactness, and cuts within the limits', () => {
    const effort = fc.record({
      mostCells: fc.integer({ min: 8, max: 400 }),
      mostSteps: fc.integer({ min: 0, max: 2000 }),
    });
    let found = 0;
    fc.assert(
      fc.property(boxCase({ narrowest: true }), effort, fc.boolean(), (drawn, effort, keep) => {
        const { box, limits, values, coin } = drawn;
        const rule = keep ? drawn.rule : undefined;
        const priced = new FreePricer([box], limits, [rule], effort).price(values, coin);
        const best = bestOfEveryCut(box, limits, values, coin, rule);
        expect(priced.worth[0]).toBeGreaterThanOrEqual(best);
        const pattern = priced.pattern(0);
        if (pattern === undefined) return;
        found++;
        const measured = measuredPattern(pattern.part, 0, box, limits, rule);
        expect(measured).toEqual({ legal: true, pattern });
        expect(worthOf(pattern, values, coin)).toBeLessThanOrEqual(best);
      }),
      { numRuns: 1000 },
    );
    expect(found).toBeGreaterThan(300);
  });
});
