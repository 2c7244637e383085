import { describe, expect, it } from 'vitest';
import { EVERY_TICK } from './measure.js';
import { pricingSteps } from './pricing-steps.js';

describe('pricingSteps', () => {
  const box = (...widths: readonly number[]) => ({
    length: 100,
    width: 50,
    firstCuts: ['along'] as const,
    lays: widths.map((width, piece) => ({ piece, turned: false, length: 40, width })),
  });
  const steps = (widths: readonly number[], kerf: number, narrowest: number) => {
    const limits = { kerf, narrowest, longestCut: Number.POSITIVE_INFINITY };
    const plenty = widths.map(() => 1000);
    return pricingSteps([box(...widths)], plenty, limits, 'few', EVERY_TICK);
  };

  it('counts a place in the strip and one in the sheet for each piece, where slivers need no mind', () => {
    expect(steps([10, 12, 20], 0, 1)).toBe(3 * 100 + 3 * 50);
    expect(steps([10, 12, 20], 5, 1)).toBe(3 * 100 + 3 * 50);
  });

  it('counts what a width shares with no other, where slivers may be too narrow', () => {
    // Two widths for each piece, each with its own piece only.
    expect(steps([10, 12, 20], 0, 4)).toBe((3 + 2 * 3) * 100 + 2 * 3 * 50);
    // A kerf may take what is left beside the piece of 10 in a strip of 12.
    expect(steps([10, 12, 20], 2, 4)).toBe((3 + 2 * 4) * 100 + 2 * 3 * 50);
    expect(steps([10, 12, 20], 10, 4)).toBe((3 + 2 * 6) * 100 + 2 * 3 * 50);
    // Pieces of one width share its strips.
    expect(steps([10, 10, 20], 0, 4)).toBe((3 + 2 * 3) * 100 + 2 * 3 * 50);
  });
});
