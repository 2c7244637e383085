import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { RasterBox } from './raster-box.js';
import { WholeBox } from './whole-box.js';

describe('RasterBox', () => {
  it('loses nothing against every whole size, in boxes too large to try every cut', () => {
    fc.assert(
      fc.property(boxCase({ most: 150 }), ({ box, limits, values }) => {
        const raster = new RasterBox(box, limits).solve(values);
        expect(raster).toBe(new WholeBox(box, limits).solve(values, 0));
      }),
      { numRuns: 200 },
    );
  });
});
