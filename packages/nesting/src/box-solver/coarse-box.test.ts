import { describe, expect, it } from 'vitest';
import { countsOf } from '../pattern/walk-part.js';
import { RasterBands } from '../three-stage/raster-bands.js';
import { BestOf } from './best-of.js';
import { loosePartOf } from './box-solver.js';
import { CoarseBox } from './coarse-box.js';
import { TurnedBox } from './turned-box.js';

describe('CoarseBox', () => {
  it('tells the pieces that its worth counts, though they need not fit, and those that do', () => {
    const lays = [{ piece: 0, turned: false, length: 31, width: 10 }];
    const box = { length: 90, width: 30, firstCuts: ['along'] as const, lays };
    const limits = { kerf: 0, narrowest: 1, longestCut: Number.POSITIVE_INFINITY };
    const coarse = (own: typeof box) =>
      new CoarseBox(own, limits, 2, (steps, coarser) => new RasterBands(steps, coarser));
    // The same seen from its side, and as the better of two kinds.
    const side = { length: 30, width: 90, firstCuts: ['along'] as const };
    const turned = { ...side, lays: [{ piece: 0, turned: true, length: 10, width: 31 }] };
    const solvers = [
      coarse(box),
      new TurnedBox(turned, () => coarse(box)),
      new BestOf([coarse(box), coarse({ ...box, length: 40 })]),
    ];
    for (const solver of solvers) {
      // By area 2,700 / 310 pieces; in steps three to a row of 45 steps, where 31 ticks are 15.
      expect(solver.solve([100], 0)).toBeCloseTo((100 * 2700) / 310, 6);
      const loose = loosePartOf(solver);
      expect(loose && countsOf(loose)).toEqual([[0, 9]]);
      const part = solver.part();
      expect(part && countsOf(part)).toEqual([[0, 6]]);
    }
  });
});
