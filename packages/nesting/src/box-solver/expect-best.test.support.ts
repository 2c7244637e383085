import fc from 'fast-check';
import { expect } from 'vitest';
import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Pattern } from '../pattern/part.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import type { KeepRule } from '../problem.js';
import type { Effort } from './effort.js';
import { bestOfEveryCut } from './every-cut.test.support.js';
import { type BoxCase, boxCase } from './random-box.test.support.js';
import { replayed } from './replayed.test.support.js';

/** A pricer and the cuts it may make. */
export interface Kind {
  readonly stages: number | 'free';
  readonly pricer: new (
    boxes: readonly Box[],
    limits: Limits,
    rules: readonly (KeepRule | undefined)[],
    effort?: Effort,
  ) => PatternPricer;
}

/** Prices a box, and compares with trying every cut at every tick. */
export function expectBest(drawn: BoxCase, { stages, pricer: Pricer }: Kind): void {
  const { box, limits, values, coin, rule } = drawn;
  const priced = new Pricer([box], limits, [rule]).price(values, coin);
  expect(priced.worth[0]).toBe(bestOfEveryCut({ ...drawn, stages }));
  const pattern = priced.patterns(0)[0]?.pattern;
  if (pattern === undefined) {
    // Then remnants alone are worth as much.
    const bare = { ...box, lays: [] };
    expect(priced.worth[0]).toBe(bestOfEveryCut({ ...drawn, box: bare, stages }));
    return;
  }
  expect(pattern.counts.length).toBeGreaterThan(0);
  expect(replayed(pattern.part, drawn, stages)).toEqual({
    counts: pattern.counts,
    kept: pattern.kept,
  });
  expect(worthOf(pattern, values, coin)).toBe(priced.worth[0]);
}

/** Prices boxes with hardly any effort, and compares in the same way. */
export function expectNotTooLittle({ stages, pricer: Pricer }: Kind, numRuns: number): void {
  const effort = fc.record({
    mostCells: fc.integer({ min: 8, max: 400 }),
  });
  let found = 0;
  fc.assert(
    fc.property(
      boxCase({ narrowest: true, keep: true }),
      effort,
      fc.boolean(),
      (all, effort, keep) => {
        const drawn = keep ? all : { ...all, rule: undefined };
        const { box, limits, values, coin, rule } = drawn;
        const priced = new Pricer([box], limits, [rule], effort).price(values, coin);
        const best = bestOfEveryCut({ ...drawn, stages });
        expect(priced.worth[0]).toBeGreaterThanOrEqual(best);
        const pattern = priced.patterns(0)[0]?.pattern;
        if (pattern === undefined) return;
        found++;
        expect(replayed(pattern.part, drawn, stages)).toEqual({
          counts: pattern.counts,
          kept: pattern.kept,
        });
        expect(worthOf(pattern, values, coin)).toBeLessThanOrEqual(best);
      },
    ),
    { numRuns },
  );
  expect(found).toBeGreaterThan(numRuns / 4);
}

function worthOf({ counts, kept }: Pattern, values: readonly number[], coin: number): number {
  return counts.reduce((sum, [piece, copies]) => sum + values[piece] * copies, coin * kept);
}
