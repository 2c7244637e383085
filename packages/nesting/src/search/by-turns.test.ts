import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ByTurns } from './by-turns.js';

/** The ways tried, where each brings what is told. */
function tried(times: number, brings: (way: 0 | 1, time: number) => number | undefined) {
  const turns = new ByTurns<0 | 1>(0, 1);
  return Array.from({ length: times }, (_, time) => {
    const way = turns.next;
    turns.tried(way, brings(way, time));
    return way;
  });
}

describe('ways by turns', () => {
  it('take turns while neither brings less', () => {
    expect(tried(6, () => 1)).toEqual([0, 1, 0, 1, 0, 1]);
  });

  it('put off the one that brings less, twice as long each time', () => {
    const ways = tried(60, (way) => (way === 0 ? -2 : 1)).join('');
    expect(ways).toMatch(/^010+1/);
    const waits = ways.split('0').map((others) => others.length);
    expect(waits.slice(2, 7)).toEqual([2, 4, 8, 16, 16].map((turns) => turns - 1));
  });

  it('put off one that brings nothing, even before the other was tried', () => {
    expect(tried(5, (way) => (way === 0 ? undefined : 0))).toEqual([0, 1, 0, 1, 1]);
  });

  it('come back to turns once it brings more', () => {
    const ways = tried(40, (way, time) => (way === 1 ? 1 : time < 12 ? 0 : 2));
    const back = ways.findIndex((way, time) => way === 0 && time >= 12);
    expect(ways.slice(back, back + 3)).toEqual([0, 1, 0]);
  });

  it('never leave one out for more than sixteen turns', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 60 }), (bring) => {
        const ways = tried(bring.length, (_, time) =>
          bring[time] === 3 ? undefined : bring[time],
        );
        for (const way of [0, 1] as const) {
          const at = ways.flatMap((one, time) => (one === way ? [time] : []));
          expect(at[0]).toBeLessThan(4);
          at.slice(1).forEach((time, i) => {
            expect(time - at[i]).toBeLessThanOrEqual(18);
          });
        }
      }),
    );
  });
});
