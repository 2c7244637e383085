import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../pattern/box.js';
import { boxRaster } from './raster-points.js';
import { shareEffort } from './share-effort.js';

const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
const sliverless = { ...limits, narrowest: 2 };

/** A box on which one piece may lie that is a tick each way, so that every tick is a raster point. */
function box(length: number, width: number): Box {
  const lays = [{ piece: 0, turned: false, length: 1, width: 1 }];
  return { length, width, firstCuts: ['along'], lays };
}

const none = (boxes: readonly Box[]) => boxes.map(() => undefined);

describe('shareEffort', () => {
  it('lets boxes be where there is enough for all, or no limit', () => {
    const boxes = [box(9, 9), box(19, 9)];
    expect(shareEffort(boxes, limits, none(boxes), { mostCells: 80 })).toEqual({ mostCells: 80 });
    const effort = { mostCells: 1000, mostCellsInAll: 300 };
    expect(shareEffort(boxes, limits, none(boxes), effort)).toEqual({ mostCells: 1000 });
  });

  it('gives small ones what they ask for, and large ones the same of what is left', () => {
    // 100, 200 and 10000 rectangles by whole ticks.
    const boxes = [box(99, 99), box(9, 9), box(19, 9)];
    const effort = { mostCells: 1_000_000, mostCellsInAll: 1000 };
    expect(shareEffort(boxes, sliverless, none(boxes), effort)).toEqual({ mostCells: 700 });
    // A third each is less than the second asks for: what the first leaves is for the two.
    const less = { ...effort, mostCellsInAll: 400 };
    expect(shareEffort(boxes, sliverless, none(boxes), less)).toEqual({ mostCells: 150 });
    expect(shareEffort(boxes, sliverless, none(boxes), { ...less, mostCells: 120 })).toEqual({
      mostCells: 120,
    });
  });

  it('never lets them take more together than there is', () => {
    const side = fc.integer({ min: 1, max: 40 });
    const rule = { leastLength: 1, leastWidth: 1, coinsPerMillion: 1 };
    fc.assert(
      fc.property(
        fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 10, max: 6000 }),
        fc.boolean(),
        (sides, mostCellsInAll, valued) => {
          const boxes = sides.map(([length, width]) => box(length, width));
          const rules = boxes.map(() => (valued ? rule : undefined));
          const { mostCells } = shareEffort(boxes, limits, rules, {
            mostCells: 1e9,
            mostCellsInAll,
          });
          const cells = boxes.map((each) => {
            const { xs, ys } = boxRaster(each, limits);
            return valued ? (each.length + 1) * (each.width + 1) : xs.at.length * ys.at.length;
          });
          const taken = cells.reduce((sum, asked) => sum + Math.min(asked, mostCells), 0);
          expect(taken).toBeLessThanOrEqual(Math.max(mostCellsInAll, boxes.length));
          // No more than rounding is left unless all have what they ask for.
          if (cells.some((asked) => asked > mostCells)) {
            expect(taken).toBeGreaterThan(mostCellsInAll - boxes.length);
          }
        },
      ),
    );
  });
});
