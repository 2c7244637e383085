import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayRest } from '../pattern/limits.js';
import { fillStrip, fillStrips } from './fill-strip.js';

const lay = { piece: 0, turned: false, length: 1, width: 1 };
const none = { kerf: 0, longestCut: 1, narrowest: 1 };

describe('fillStrip', () => {
  it('is worth as much as the best of all fillings', () => {
    const items = fc.array(
      fc.record({
        extent: fc.integer({ min: 1, max: 12 }),
        worth: fc.integer({ min: 1, max: 50 }),
        most: fc.integer({ min: 1, max: 4 }),
      }),
      { minLength: 1, maxLength: 4 },
    );
    const limits = fc.record({
      kerf: fc.integer({ min: 0, max: 2 }),
      longestCut: fc.constant(1),
      narrowest: fc.integer({ min: 1, max: 5 }),
    });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), items, limits, (room, items, limits) => {
        let best = 0;
        const enumerate = (at: number, used: number, worth: number): void => {
          if (used > room) return;
          if (at === items.length) {
            if (mayRest(room - used, limits)) best = Math.max(best, worth);
            return;
          }
          for (let copies = 0; copies <= items[at].most; copies++) {
            enumerate(at + 1, used + copies * items[at].extent, worth + copies * items[at].worth);
          }
        };
        enumerate(0, 0, 0);
        const counts = fillStrip(
          room,
          items.map((item) => ({ ...item, lay })),
          limits,
          1e6,
        );
        const used = counts.reduce((sum, copies, i) => sum + copies * items[i].extent, 0);
        const worth = counts.reduce((sum, copies, i) => sum + copies * items[i].worth, 0);
        expect(worth).toBe(best);
        if (worth > 0) expect(mayRest(room - used, limits)).toBe(true);
        expect(counts.every((copies, i) => copies <= items[i].most)).toBe(true);
      }),
    );
  });

  it('fills several strips in one pass as it would one by one', () => {
    const items = [3, 5, 7, 11, 4].map((extent, i) => ({
      lay,
      extent,
      worth: [4, 8, 9, 15, 7][i],
      most: 2,
    }));
    const ends = [1, 2, 4, 5];
    expect(fillStrips(29, items, ends, none, 1e5)).toEqual(
      ends.map((end) => {
        const counts = fillStrip(29, items.slice(0, end), none, 1e5);
        return [...counts, ...new Array<number>(items.length - end).fill(0)];
      }),
    );
  });

  it('still fits where it is reckoned coarsely', () => {
    const items = [7919, 10_007, 12_289].map((extent) => ({
      lay,
      extent,
      worth: extent,
      most: 99,
    }));
    const counts = fillStrip(200_000, items, none, 1e5);
    const used = counts.reduce((sum, copies, i) => sum + copies * items[i].extent, 0);
    expect(used).toBeLessThanOrEqual(200_000);
    // From 7919 up, a gap as large as the smallest item would mean that it was not filled.
    expect(used).toBeGreaterThan(200_000 - 7919);
  });
});
