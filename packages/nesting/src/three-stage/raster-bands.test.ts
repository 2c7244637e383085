import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { RasterBands } from './raster-bands.js';
import { WholeBands } from './whole-bands.js';

describe('RasterBands', () => {
  it('loses nothing against every whole size, in boxes too large to try every cut', () => {
    fc.assert(
      fc.property(boxCase({ most: 150 }), ({ box, limits, values }) => {
        const raster = new RasterBands(box, limits).solve(values);
        expect(raster).toBe(new WholeBands(box, limits, undefined).solve(values, 0));
      }),
      { numRuns: 200 },
    );
  });
});
