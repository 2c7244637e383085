import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalPoints, reducedRasterPoints, upTo } from './raster-points.js';

const extents = fc.array(fc.integer({ min: 3, max: 60 }), { minLength: 1, maxLength: 6 });
const box = fc.integer({ min: 1, max: 200 });

describe('reducedRasterPoints', () => {
  // Worked by hand: sums of 4 and 7 up to 16 are 0, 4, 7, 8, 11, 12, 14, 15, 16; what
  // stands beside each has room for 16, 12, 9, 8, 5, 4, 2, 1, 0, so 14, 11, 15 and 7 drop out.
  it('drops the sums beside which no other sum needs them', () => {
    expect([...reducedRasterPoints([4, 7], 16).at]).toEqual([0, 4, 8, 12, 16]);
  });

  it('keeps for every sum a point with which the rest of the box holds as much', () => {
    fc.assert(
      fc.property(extents, box, (extents, box) => {
        const normal = normalPoints(extents, box);
        const { at, above } = reducedRasterPoints(extents, box);
        const largest = (room: number) => normal.lastIndexOf(1, room);
        for (let x = 0; x <= box; x++) {
          if (normal[x] === 0) continue;
          const point = at[above[x]];
          expect(normal[point]).toBe(1);
          expect(largest(box - point)).toBe(largest(box - x));
        }
      }),
    );
  });

  it('tells the points on both sides of every extent', () => {
    fc.assert(
      fc.property(extents, box, box, (extents, box, reach) => {
        const points = upTo(reducedRasterPoints(extents, box, reach), Math.min(reach, box));
        const { at, below, above } = points;
        for (let x = 0; x < below.length; x++) {
          expect(at[below[x]]).toBe(at.findLast((point) => point <= x));
          expect(above[x] < 0 ? undefined : at[above[x]]).toBe(at.find((point) => point >= x));
        }
      }),
    );
  });
});
