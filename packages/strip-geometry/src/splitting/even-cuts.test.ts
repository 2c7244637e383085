import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { evenCuts, type Interval } from './even-cuts.js';

/** Places of one kind. */
const only = (all: readonly Interval[]) => ({ preferred: all, all });

const ANYWHERE = only([{ from: 0, to: 1000 }]);

test('cut anywhere, the parts are equal and as few as can be', () => {
  expect(evenCuts(900, 1000, ANYWHERE, 9)).toEqual([]);
  expect(evenCuts(900, 450, ANYWHERE, 9)).toEqual([450]);
  expect(evenCuts(900, 400, ANYWHERE, 9)).toEqual([300, 600]);
  expect(evenCuts(900, 100, ANYWHERE, 8)).toBeUndefined();
});

test('by hand: the longest part is as short as the places let it be', () => {
  const allowed = only([
    { from: 100, to: 200 },
    { from: 700, to: 750 },
  ]);
  // Two parts: 200 and 700, or 700 and 200, or 750 and 150: the longest is 700 at least.
  const [cut = Number.NaN] = evenCuts(900, 800, allowed, 9) ?? [];
  expect(Math.max(cut, 900 - cut)).toBeCloseTo(700, 6);
  // Three parts at most 600 long: cuts at 150 to 200 and 700 to 750, so 200, 500, 200.
  expect(evenCuts(900, 600, allowed, 9)).toEqual([expect.closeTo(200, 6), expect.closeTo(700, 6)]);
  // Nothing lies between 200 and 700.
  expect(evenCuts(900, 499, allowed, 9)).toBeUndefined();
});

test('by hand: few parts come before preferred places, and those before even parts', () => {
  const preferred = [{ from: 200, to: 250 }];
  const all = [{ from: 0, to: 900 }];
  // Two parts of at most 500 need a cut from 400 to 500, where none is preferred.
  expect(evenCuts(900, 500, { preferred, all }, 9)).toEqual([expect.closeTo(450, 6)]);
  // Two parts of at most 700 can be cut at 250, which leaves 650: uneven, but preferred.
  expect(evenCuts(900, 700, { preferred, all }, 9)).toEqual([expect.closeTo(250, 6)]);
  // Three parts of at most 420: one cut is preferred, the other halves what is left.
  expect(evenCuts(900, 420, { preferred, all }, 9)).toEqual(
    [250, 575].map((cut) => expect.closeTo(cut, 6)),
  );
  // Preferred places alone would take no number of parts.
  expect(evenCuts(900, 420, only(preferred), 9)).toBeUndefined();
});

const anyPlaces = fc
  .array(fc.record({ from: between(0, 95), wide: between(0, 12) }), { maxLength: 6 })
  .map((places) =>
    places
      .sort((a, b) => a.from - b.from)
      .map(({ from, wide }) => ({ from, to: Math.min(100, from + wide) })),
  );

function gridOf(allowed: readonly Interval[]): number[] {
  return allowed.flatMap(({ from, to }) => {
    const count = Math.max(1, Math.ceil(to - from));
    return Array.from({ length: count + 1 }, (_, index) => from + ((to - from) * index) / count);
  });
}

/** Every way of cutting at a fine grid of allowed places, tried one by one. */
function bestByTrying(longest: number, allowed: readonly Interval[], parts: number): number {
  const grid = gridOf(allowed);
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
      const cuts = evenCuts(100, longest, only(allowed), 3);
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

test('no way of cutting has as few parts, more of them at preferred places, or a shorter longest part', () => {
  const anyLists = fc.tuple(anyPlaces, anyPlaces);
  fc.assert(
    fc.property(anyLists, between(26, 99), ([preferred, others], longest) => {
      const all = [...preferred, ...others].sort((a, b) => a.from - b.from);
      const cuts = evenCuts(100, longest, { preferred, all }, 3);
      const grids = { preferred: gridOf(preferred), others: gridOf(others) };
      const tried = [1, 2, 3].map((parts) => bestOfBoth(longest, grids, parts));
      const fewest = tried.findIndex((best) => best !== undefined);
      if (cuts === undefined) {
        expect(fewest).toBe(-1);
        return;
      }
      // A grid may miss a division with as few parts, but never finds one with fewer.
      expect(fewest === -1 || cuts.length <= fewest).toBe(true);
      const isPreferred = (cut: number) =>
        preferred.some(({ from, to }) => cut >= from - 1e-6 && cut <= to + 1e-6);
      for (const cut of cuts) {
        expect(all.some(({ from, to }) => cut >= from - 1e-6 && cut <= to + 1e-6)).toBe(true);
      }
      const elsewhere = cuts.filter((cut) => !isPreferred(cut)).length;
      const best = tried[cuts.length];
      if (best === undefined) return;
      expect(elsewhere).toBeLessThanOrEqual(best.elsewhere);
      const stops = [0, ...cuts, 100];
      const lengths = stops.slice(1).map((stop, index) => stop - (stops[index] ?? 0));
      expect(Math.max(...lengths)).toBeLessThanOrEqual(longest + 1e-6);
      if (elsewhere === best.elsewhere) {
        expect(Math.max(...lengths)).toBeLessThanOrEqual(best.longest + 1e-6);
      }
    }),
    { numRuns: 200 },
  );
});

interface Tried {
  readonly elsewhere: number;
  readonly longest: number;
}

/** The best of every way of cutting at a grid of places: fewest elsewhere, then the shortest longest part. */
function bestOfBoth(
  longest: number,
  grids: { readonly preferred: readonly number[]; readonly others: readonly number[] },
  parts: number,
): Tried | undefined {
  let best: Tried | undefined;
  const cutFrom = (start: number, left: number, elsewhere: number, most: number) => {
    if (left === 1) {
      const found = { elsewhere, longest: Math.max(most, 100 - start) };
      const isBetter =
        best === undefined ||
        found.elsewhere < best.elsewhere ||
        (found.elsewhere === best.elsewhere && found.longest < best.longest);
      if (found.longest <= longest && isBetter) best = found;
      return;
    }
    for (const [grid, more] of [
      [grids.preferred, 0],
      [grids.others, 1],
    ] as const) {
      for (const place of grid) {
        if (place >= start && place - start <= longest) {
          cutFrom(place, left - 1, elsewhere + more, Math.max(most, place - start));
        }
      }
    }
  };
  cutFrom(0, parts, 0, 0);
  return best;
}
