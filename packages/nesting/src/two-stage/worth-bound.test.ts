import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoxCase, boxCase } from '../box-solver/random-box.test.support.js';
import type { Box } from '../pattern/box.js';
import { keptValue } from '../pattern/kept-value.js';
import type { KeepRule } from '../problem.js';
import { CreditedPricer } from './credited-pricer.js';
import { TwoStagePricer } from './two-stage-pricer.js';
import { WorthBound } from './worth-bound.js';

/** More copies than fit any box here. */
const PLENTY = 1000;

/** What strips of every width, tried one by one, find for a box; and what is said of it beforehand. */
function worths({ box, limits, values, coin }: BoxCase, rule: KeepRule) {
  const demand = values.map(() => PLENTY);
  const keep = (length: number, width: number) => keptValue(length, width, rule);
  const exact = new TwoStagePricer([box], demand, limits, keep, 'every').price(values, coin)
    .worth[0];
  const closer = new WorthBound([box], demand, limits, rule);
  const [bound] = closer.worth(values, coin, Number.POSITIVE_INFINITY) ?? [];
  const valued = new TwoStagePricer([box], demand, limits, keep);
  const credited = new CreditedPricer([box], demand, limits, rule, valued);
  return { exact, bound, quick: credited.price(values, coin).worth[0] };
}

describe('WorthBound', () => {
  it('is never below what strips of every width are worth', () => {
    fc.assert(
      fc.property(boxCase({ narrowest: true, keep: true }), (drawn) => {
        if (drawn.rule === undefined) return;
        const { exact, bound } = worths(drawn, drawn.rule);
        expect(bound).toBeGreaterThanOrEqual(exact);
      }),
      { numRuns: 1000 },
    );
  });

  it('is given up, or left as it is, once it has taken so many steps', () => {
    const seen = { given: 0, up: 0 };
    fc.assert(
      fc.property(
        boxCase({ keep: true }),
        fc.integer({ min: 1, max: 3000 }),
        ({ box, limits, values, coin, rule }, steps) => {
          if (rule === undefined) return;
          const demand = values.map(() => PLENTY);
          const bound = () => new WorthBound([box], demand, limits, rule);
          const closest = bound().worth(values, coin, Number.POSITIVE_INFINITY)?.[0] ?? 0;
          const early = bound().worth(values, coin, steps);
          if (early === undefined) {
            seen.up++;
            return;
          }
          seen.given++;
          expect(early[0]).toBeGreaterThanOrEqual(closest);
        },
      ),
      { numRuns: 500 },
    );
    expect(seen.given).toBeGreaterThan(100);
    expect(seen.up).toBeGreaterThan(50);
  });

  it('is given up too where so many widths could lie side by side', () => {
    // A strip of any width is worth another sum, and some 2900 of them are put into 3000 rooms.
    const rule = { leastLength: 1, leastWidth: 1, coinsPerMillion: 1_000_000 };
    const lays = [{ piece: 0, turned: false, length: 90, width: 60 }];
    const box: Box = { length: 100, width: 3000, firstCuts: ['along'], lays };
    const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
    const worth = (steps: number) =>
      new WorthBound([box], [PLENTY], limits, rule).worth([9000], 1, steps);
    expect(worth(4_000_000)).toBeUndefined();
    // 50 strips of one piece each; what is beside the pieces is kept.
    expect(worth(400_000_000)?.[0]).toBeGreaterThanOrEqual(50 * (9000 + 600));
  });

  it('is just that where the shear cuts anything and a remnant is worth whole coins', () => {
    let kept = 0;
    let closer = 0;
    fc.assert(
      fc.property(boxCase({ keep: true }), fc.integer({ min: 1, max: 3 }), (drawn, rate) => {
        const rule = {
          leastLength: 6,
          leastWidth: 4,
          trouble: 5,
          ...drawn.rule,
          coinsPerMillion: rate * 1_000_000,
          millions: 1,
        };
        const limits = { ...drawn.limits, longestCut: Number.POSITIVE_INFINITY };
        const { exact, bound, quick } = worths({ ...drawn, limits }, rule);
        expect(bound).toBeGreaterThanOrEqual(exact);
        // Rounded up to be safe.
        expect(bound).toBeLessThanOrEqual(exact + 1);
        const plain = worths({ ...drawn, limits, coin: 0 }, rule).exact;
        if (exact > plain) kept++;
        if (bound < quick) closer++;
      }),
      { numRuns: 1000 },
    );
    expect(kept).toBeGreaterThan(300);
    expect(closer).toBeGreaterThan(100);
  });
});

describe('CreditedPricer', () => {
  /** So many kinds of strips of one length and another, on a sheet of their size. */
  const pricer = (kinds: number) => {
    const rule = { leastLength: 400, leastWidth: 100, coinsPerMillion: 200, trouble: 15 };
    const lays = Array.from({ length: kinds }, (_, piece) => [
      { piece, turned: false, length: 700 + piece, width: 60 },
      { piece, turned: true, length: 60, width: 700 + piece },
    ]).flat();
    const box: Box = { length: 2000, width: 1280, firstCuts: ['along', 'across'], lays };
    const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
    const keep = (length: number, width: number) => keptValue(length, width, rule);
    const demand = Array.from({ length: kinds }, () => 9);
    const values = demand.map((_, piece) => 60 * (700 + piece));
    const valued = new TwoStagePricer([box], demand, limits, keep);
    return { own: new CreditedPricer([box], demand, limits, rule, valued), values };
  };

  it('tells a closer worth, unless there are so many kinds that it would take long', () => {
    const few = pricer(10);
    const [closer] = few.own.atMost(few.values, 1000) ?? [];
    const priced = few.own.price(few.values, 1000);
    expect(closer).toBeLessThan(priced.worth[0]);
    const [{ worth }] = priced.patterns(0);
    expect(closer).toBeGreaterThanOrEqual(worth);
    const many = pricer(600);
    expect(many.own.atMost(many.values, 1000)).toBeUndefined();
  });
});
