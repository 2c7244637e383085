import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tilesAcross, tilesOf } from './tiles.js';

const limits = { toJoin: 240, toEnd: 247, mostLabels: 50 };

describe('dividing a strip over pages', () => {
  it('takes one page where it fits, and two for 17 in', () => {
    expect(tilesOf(247, { ...limits, labels: [] })).toEqual([{ from: 0, to: 247 }]);
    expect(tilesOf(431.8, { ...limits, labels: [] })).toEqual([
      { from: 0, to: 240 },
      { from: 240, to: 431.8 },
    ]);
  });

  it('puts a join clear of marks', () => {
    const [first] = tilesOf(431.8, { ...limits, labels: [236, 239, 241] });
    expect(first?.to).toBe(233);
  });

  it('covers the strip end to end within its limits, whatever is marked', () => {
    const marks = fc.array(fc.double({ min: 0, max: 900, noNaN: true }), { maxLength: 300 });
    fc.assert(
      fc.property(fc.double({ min: 1, max: 900, noNaN: true }), marks, (length, places) => {
        const labels = places.filter((place) => place <= length).sort((a, b) => a - b);
        const tiles = tilesOf(length, { ...limits, labels });
        expect(tiles[0]?.from).toBe(0);
        expect(tiles.at(-1)?.to).toBe(length);
        tiles.forEach(({ from, to }, index) => {
          expect(to).toBeGreaterThan(from);
          const isLast = index === tiles.length - 1;
          expect(to - from).toBeLessThanOrEqual(isLast ? limits.toEnd : limits.toJoin);
          if (!isLast) expect(tiles[index + 1]?.from).toBe(to);
          const own = labels.filter((label) => label >= from && (label < to || isLast));
          // No more labels than a page holds, unless as many crowd the least step.
          if (to - from > 5) expect(own.length).toBeLessThanOrEqual(limits.mostLabels);
        });
      }),
    );
  });

  it('divides a wide strip evenly, and leaves room for the overlap', () => {
    expect(tilesAcross(80, 80, 6)).toEqual([{ from: 0, to: 80 }]);
    expect(tilesAcross(100, 80, 6)).toEqual([
      { from: 0, to: 50 },
      { from: 50, to: 100 },
    ]);
  });
});
