import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { mayRest } from '../pattern/limits.js';
import { sectionColumns } from './section-columns.js';

describe('sectionColumns', () => {
  it('gives one number only to lengths to which the same pieces can be trimmed, within reach or not', () => {
    let shared = 0;
    fc.assert(
      fc.property(boxCase({ most: 60, narrowest: true }), ({ box, limits }) => {
        const columns = sectionColumns(box, limits);
        const trimmed = (x: number) =>
          box.lays.map(({ length }) => x >= length && mayRest(x - length, limits));
        const exact = (x: number) => box.lays.map(({ length }) => x === length);
        const within = (x: number) => x <= limits.longestCut + limits.kerf;
        for (let x = 2; x <= box.length; x++) {
          expect(columns[x] - columns[x - 1]).toBeGreaterThanOrEqual(0);
          if (columns[x] !== columns[x - 1]) continue;
          expect([trimmed(x), exact(x), within(x)]).toEqual([
            trimmed(x - 1),
            exact(x - 1),
            within(x - 1),
          ]);
          shared++;
        }
      }),
    );
    expect(shared).toBeGreaterThan(1000);
  });

  it('gives lengths numbers of their own where that is asked for', () => {
    const box = { length: 9, width: 5, firstCuts: ['along'] as const, lays: [] };
    const limits = { kerf: 0, narrowest: 1, longestCut: Number.POSITIVE_INFINITY };
    const own = Uint8Array.from([0, 0, 0, 1, 1, 0, 0, 0, 0, 1]);
    expect([...sectionColumns(box, limits, own)]).toEqual([0, 0, 0, 1, 2, 2, 2, 2, 2, 3]);
    expect([...sectionColumns(box, limits)]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
  });
});
