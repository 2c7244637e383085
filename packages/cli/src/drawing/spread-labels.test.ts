import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from './spread-labels.js';

const wanted = fc
  .array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 9 })
  .map((centres) => centres.sort((one, other) => one - other));

describe('spreading labels', () => {
  it('moves three labels that want one place by equal steps', () => {
    expect(spreadLabels([10, 10, 10], 6, -50, 50)).toEqual([4, 10, 16]);
  });

  it('pools as the isotonic regression of 1, 3, 2, 4 does: 1, 2.5, 2.5, 4', () => {
    // From memory: the usual first example of pooling neighbours. Pitch 10 is taken off here.
    expect(spreadLabels([1, 13, 22, 34], 10, -100, 100)).toEqual([1, 12.5, 22.5, 34]);
  });

  it('keeps the order, the pitch and the ends', () => {
    fc.assert(
      fc.property(wanted, (centres) => {
        const spread = spreadLabels(centres, 10, -2, 102);
        expect(spread.length).toBe(centres.length);
        expect(spread[0]).toBeGreaterThanOrEqual(3 - 1e-9);
        expect(spread.at(-1)).toBeLessThanOrEqual(97 + 1e-9);
        for (const [index, centre] of spread.slice(1).entries()) {
          expect(centre - (spread[index] ?? NaN)).toBeGreaterThanOrEqual(10 - 1e-9);
        }
      }),
    );
  });

  it('moves no label that has room', () => {
    fc.assert(
      fc.property(wanted, (centres) => {
        const apart = centres.map((centre, index) => centre + 11 * index);
        const spread = spreadLabels(apart, 10, -1000, 1000);
        for (const [index, centre] of spread.entries()) {
          expect(centre).toBeCloseTo(apart[index] ?? NaN, 9);
        }
      }),
    );
  });
});
