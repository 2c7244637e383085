import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoxCase, boxCase } from '../box-solver/random-box.test.support.js';
import { replayed } from '../box-solver/replayed.test.support.js';
import type { Box } from '../pattern/box.js';
import { keptValue } from '../pattern/kept-value.js';
import { countsOf } from '../pattern/walk-part.js';
import { affordablePricer, boundingPricer } from './affordable-pricers.js';
import { pricingSteps } from './pricing-steps.js';
import { RelaxedPricer } from './relaxed-pricer.js';
import { TwoStagePricer } from './two-stage-pricer.js';

const anyCase = boxCase({ most: 60, narrowest: true });
const valuedCase = boxCase({ most: 60, narrowest: true, keep: true });
const copies = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 5, maxLength: 5 });
const step = fc.integer({ min: 1, max: 7 });

const keeping =
  ({ rule }: BoxCase) =>
  (length: number, width: number) =>
    keptValue(length, width, rule);

describe('RelaxedPricer', () => {
  it('is never below what all strips to the tick are worth', () => {
    let closer = 0;
    let byArea = 0;
    fc.assert(
      fc.property(anyCase, copies, step, ({ box, limits, values }, most, step) => {
        const demand = values.map((_, piece) => most[piece]);
        const exact = new TwoStagePricer([box], demand, limits, undefined);
        const relaxed = new RelaxedPricer([box], demand, limits, exact, step);
        const [worth] = relaxed.price(values, 0).worth;
        for (const { pattern } of exact.price(values, 0).patterns(0)) {
          const wanted = pattern.counts.reduce(
            (sum, [piece, n]) => sum + values[piece] * Math.min(n, demand[piece]),
            0,
          );
          expect(worth).toBeGreaterThanOrEqual(wanted);
        }
        const plenty = values.map(() => 1000);
        const all = new RelaxedPricer([box], plenty, limits, exact, step).price(values, 0).worth[0];
        const best = new TwoStagePricer([box], plenty, limits, undefined).price(values, 0).worth[0];
        expect(all).toBeGreaterThanOrEqual(best);
        const area = box.lays.reduce(
          (most, { piece, length, width }) => Math.max(most, values[piece] / (length * width)),
          0,
        );
        expect(worth).toBeLessThanOrEqual(Math.ceil(area * box.length * box.width * (1 + 1e-9)));
        if (worth < Math.floor(area * box.length * box.width)) closer++;
        else byArea++;
      }),
      { numRuns: 2000 },
    );
    expect(closer).toBeGreaterThan(500);
    expect(byArea).toBeGreaterThan(200);
  });

  it('offers the patterns of the pricer that it is given', () => {
    fc.assert(
      fc.property(anyCase, step, ({ box, limits, values }, step) => {
        const demand = values.map(() => 1000);
        const finder = new TwoStagePricer([box], demand, limits, undefined);
        const relaxed = new RelaxedPricer([box], demand, limits, finder, step);
        const offered = relaxed.price(values, 0);
        expect(offered.patterns(0)).toEqual(finder.price(values, 0).patterns(0));
        expect(offered.bands?.().length).toBe(finder.price(values, 0).bands?.().length);
      }),
    );
  });
});

describe('TwoStagePricer in steps of several ticks', () => {
  it('makes patterns that can be cut, worth no less than it says', () => {
    let found = 0;
    let kept = 0;
    fc.assert(
      fc.property(
        valuedCase,
        fc.integer({ min: 2, max: 6 }),
        fc.boolean(),
        (drawn, step, worthless) => {
          const { box, limits, values, coin } = drawn;
          const rule = worthless ? undefined : drawn.rule;
          const demand = values.map(() => 1000);
          const keep = worthless ? undefined : keeping(drawn);
          const measure = { step, pieces: 'up' } as const;
          const pricer = new TwoStagePricer([box], demand, limits, keep, 'needed', measure);
          const priced = pricer.price(values, coin);
          for (const { pattern, worth } of priced.patterns(0)) {
            const cut = replayed(pattern.part, { ...drawn, rule }, 2);
            expect(cut).toEqual({ counts: pattern.counts, kept: pattern.kept });
            const pieces = cut.counts.reduce((sum, [piece, n]) => sum + values[piece] * n, 0);
            expect(pieces + coin * cut.kept).toBeGreaterThanOrEqual(worth);
            found++;
            if (cut.kept > 0) kept++;
          }
          const exact = new TwoStagePricer([box], demand, limits, keep, keep ? 'every' : 'needed');
          expect(priced.worth[0]).toBeLessThanOrEqual(exact.price(values, coin).worth[0]);
        },
      ),
      { numRuns: 1500 },
    );
    expect(found).toBeGreaterThan(500);
    expect(kept).toBeGreaterThan(50);
  });

  it('makes bands that are worth no less than it says', () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 2, max: 6 }), ({ box, limits, values }, step) => {
        const demand = values.map(() => 1000);
        const measure = { step, pieces: 'up' } as const;
        const pricer = new TwoStagePricer([box], demand, limits, undefined, 'few', measure);
        for (const offer of pricer.price(values, 0).bands?.() ?? []) {
          const counts = countsOf(offer.make().part);
          const worth = counts.reduce((sum, [piece, n]) => sum + values[piece] * n, 0);
          expect(worth).toBe(offer.worth);
        }
      }),
    );
  });
});

/** So many kinds of strips that may be turned, on a sheet whose sides have so many ticks. */
function fineBox(kinds: number, ticks: number, kerf: number): Box {
  const lays = Array.from({ length: kinds }, (_, piece) => {
    const length = Math.floor(ticks * (0.1 + (0.5 * piece) / kinds)) + kerf;
    const width = Math.floor(ticks * (0.03 + 0.02 * (piece % 4))) + kerf;
    return [
      { piece, turned: false, length, width },
      { piece, turned: true, length: width, width: length },
    ];
  }).flat();
  return {
    length: ticks + kerf,
    width: Math.floor(0.64 * ticks) + kerf,
    firstCuts: ['along', 'across'],
    lays,
  };
}

describe('pricers as fine as time and memory allow', () => {
  const sawn = (ticks: number) => ({
    kerf: Math.ceil(ticks / 1000),
    narrowest: Math.ceil(ticks / 100),
    longestCut: Number.POSITIVE_INFINITY,
  });

  it('look at every tick of usual sheets', () => {
    const limits = sawn(2000);
    const box = fineBox(100, 2000, limits.kerf);
    const demand = box.lays.map(() => 20);
    const exact = new TwoStagePricer([box], demand, limits, undefined);
    const values = demand.map((_, piece) => 100 + ((piece * 37) % 91));
    const [worth] = boundingPricer([box], demand, limits).price(values, 0).worth;
    expect(worth).toBe(exact.price(values, 0).worth[0]);
  });

  it('take larger steps on the finest, which costs little', () => {
    // The same sheet in ticks 101 times as fine: what is worth most does not change but for rounding.
    const coarse = fineBox(12, 2000, 0);
    const scaled = (size: number) => size * 101;
    const box: Box = {
      ...coarse,
      length: scaled(coarse.length),
      width: scaled(coarse.width),
      lays: coarse.lays.map((lay) => ({
        ...lay,
        length: scaled(lay.length),
        width: scaled(lay.width),
      })),
    };
    const limits = { kerf: 0, narrowest: 1, longestCut: Number.POSITIVE_INFINITY };
    const demand = coarse.lays.map(() => 1000);
    // By area, and a little more for some.
    const values = Array.from({ length: 12 }, (_, piece) => {
      const { length, width } = coarse.lays[2 * piece];
      return length * width + ((piece * 7919) % 1000);
    });
    const [exact] = new TwoStagePricer([coarse], demand, limits, undefined).price(values, 0).worth;
    const many = Array.from({ length: 40 }, () => box);
    const steps = pricingSteps(many, demand, limits, 'needed', { step: 1, pieces: 'up' });
    expect(steps).toBeGreaterThan(400_000_000);
    const priced = boundingPricer(many, demand, limits).price(values, 0);
    expect(priced.worth[0]).toBeGreaterThanOrEqual(exact);
    expect(priced.worth[0]).toBeLessThan(1.001 * exact);
    const [{ worth }] = priced.patterns(0);
    expect(worth).toBeLessThanOrEqual(exact);
    // What just fits in ticks does not in steps.
    expect(worth).toBeGreaterThan(0.98 * exact);
  });

  it('never look at more places than some hundred millions, however fine the ticks and wide the kerf', () => {
    const limits = sawn(200_000);
    const box = fineBox(100, 200_000, limits.kerf);
    const demand = box.lays.map(() => 20);
    const boxes = [box, box, box];
    const exact = pricingSteps(boxes, demand, limits, 'needed', { step: 1, pieces: 'up' });
    expect(exact).toBeGreaterThan(1_000_000_000);
    const values = demand.map((_, piece) => 1000 + piece);
    const priced = affordablePricer(boxes, demand, limits, undefined, 'needed').price(values, 0);
    const [{ pattern, worth }] = priced.patterns(0);
    const drawn = { box, limits, values, coin: 0, rule: undefined };
    const { counts } = replayed(pattern.part, drawn, 2);
    expect(counts.reduce((sum, [piece, n]) => sum + values[piece] * n, 0)).toBe(worth);
    const [bound] = boundingPricer(boxes, demand, limits).price(values, 0).worth;
    expect(bound).toBeGreaterThanOrEqual(worth);
    expect(worth).toBeGreaterThan(0.9 * bound);
  });
});
