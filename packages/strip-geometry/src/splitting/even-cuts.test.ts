import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { evenCuts, type Interval } from './even-cuts.js';

const ANYWHERE: readonly Interval[] = [{ from: 0, to: 1000 }];

test('cut anywhere, the parts are equal and as few as can be', () => {
  expect(evenCuts(900, 1000, ANYWHERE, 9)).toEqual([]);
  expect(evenCuts(900, 450, ANYWHERE, 9)).toEqual([450]);
  expect(evenCuts(900, 400, ANYWHERE, 9)).toEqual([300, 600]);
  expect(evenCuts(900, 100, ANYWHERE, 8)).toBeUndefined();
});

test('by hand: the longest part is as short as the places let it be', () => {
  const allowed = [
    { from: 100, to: 200 },
    { from: 700, to: 750 },
  ];
  // Two parts: 200 and 700, or 700 and 200, or 750 and 150: the longest is 700 at least.
  const [cut = Number.NaN] = evenCuts(900, 800, allowed, 9) ?? [];
  expect(Math.max(cut, 900 - cut)).toBeCloseTo(700, 6);
  // Three parts at most 600 long: cuts at 150 to 200 and 700 to 750, so 200, 500, 200.
  expect(evenCuts(900, 600, allowed, 9)).toEqual([expect.closeTo(200, 6), expect.closeTo(700, 6)]);
  // Nothing lies between 200 and 700.
  expect(evenCuts(900, 499, allowed, 9)).toBeUndefined();
});

const anyPlaces = fc
  .array(fc.record({ from: between(0, 95), wide: between(0, 12) }), { maxLength: 6 })
  .map((places) =>
    places
      .sort((a, b) => a.from - b.from)
      .map(({ from, wide }) => ({ from, to: Math.min(100, from + wide) })),
  );

/** Every way of cutting at a fine grid of allowed places, tried one by one. */
function bestByTrying(longest: number, allowed: readonly Interval[], parts: number): number {
  const grid = allowed.flatMap(({ from, to }) => {
    const count = Math.max(1, Math.ceil(to - from));
    return Array.from({ length: count + 1 }, (_, index) => from + ((to - from) * index) / count);
  });
  let best = Number.POSITIVE_INFINITY;
  const cutFrom = (start: number, left: number, most: number) => {
    if (left === 1) {
      best = Math.min(best, Math.max(most, 100 - start));
      return;
    }
    for (const place of grid) {
      if (place >= start && place - start <= longest) {
        cutFrom(place, left - 1, Math.max(most, place - start));
      }
    }
  };
  cutFrom(0, parts, 0);
  return best <= longest ? best : Number.POSITIVE_INFINITY;
}

test('no way of cutting at those places has fewer parts or a shorter longest part', () => {
  fc.assert(
    fc.property(anyPlaces, between(26, 99), (allowed, longest) => {
      const cuts = evenCuts(100, longest, allowed, 3);
      const tried = [2, 3].map((parts) => bestByTrying(longest, allowed, parts));
      if (cuts === undefined) {
        expect(tried).toEqual([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]);
        return;
      }
      const stops = [0, ...cuts, 100];
      const lengths = stops.slice(1).map((stop, index) => stop - (stops[index] ?? 0));
      for (const cut of cuts) {
        expect(allowed.some(({ from, to }) => cut >= from - 1e-6 && cut <= to + 1e-6)).toBe(true);
      }
      expect(Math.min(...lengths)).toBeGreaterThanOrEqual(-1e-6);
      expect(Math.max(...lengths)).toBeLessThanOrEqual(longest + 1e-6);
      // The grid may miss the best place, but never beats it.
      expect(Math.max(...lengths)).toBeLessThanOrEqual((tried[cuts.length - 1] ?? 0) + 1e-6);
      if (cuts.length === 2) {
        expect(tried[0]).toBe(Number.POSITIVE_INFINITY);
      }
    }),
    { numRuns: 200 },
  );
});
