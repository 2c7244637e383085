import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOfEveryCut } from '../pattern/every-cut.test.support.js';
import { measuredPattern } from '../pattern/measured-pattern.js';
import { boxCase } from '../pattern/random-box.test.support.js';
import { FreePricer } from './free-pricer.js';

describe('FreePricer', () => {
  it('finds what trying every cut at every tick finds, and cuts it within the limits', () => {
    fc.assert(
      fc.property(boxCase(), ({ box, limits, values }) => {
        const priced = new FreePricer([box], limits).price(values, 0);
        expect(priced.worth[0]).toBe(bestOfEveryCut(box, limits, values));
        const pattern = priced.pattern(0);
        expect(pattern === undefined).toBe(priced.worth[0] === 0);
        if (pattern === undefined) return;
        const measured = measuredPattern(pattern.part, 0, box, limits);
        expect(measured.legal).toBe(true);
        const worth = pattern.counts.reduce(
          (sum, [piece, copies]) => sum + values[piece] * copies,
          0,
        );
        expect(worth).toBe(priced.worth[0]);
      }),
      { numRuns: 500 },
    );
  });
});
