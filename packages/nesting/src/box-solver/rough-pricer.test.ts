import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FreePricer } from '../free-guillotine/free-pricer.js';
import { freeSolver } from '../free-guillotine/free-solver.js';
import type { Box } from '../pattern/box.js';
import { ThreeStagePricer, threeStageSolver } from '../three-stage/three-stage-pricer.js';
import type { Effort } from './effort.js';
import { ROUGH_EFFORT } from './effort.js';
import { type BoxCase, boxCase } from './random-box.test.support.js';
import { RoughPricer } from './rough-pricer.js';

const never = () => false;
const kinds = [
  { pricer: ThreeStagePricer, solver: threeStageSolver },
  { pricer: FreePricer, solver: freeSolver },
] as const;

function roughOf(
  { box, limits, rule }: BoxCase,
  { solver }: (typeof kinds)[number],
  effort: Effort,
  over = never,
): RoughPricer {
  if (rule === undefined) throw new Error('the rough pricer is for remnants with a value');
  return new RoughPricer(
    [box],
    limits,
    rule,
    (own) => solver(own, limits, undefined, effort),
    over,
  );
}

describe('RoughPricer', () => {
  it('is never worth less than the best pattern, and its own patterns are worth what it says', () => {
    const seen = { same: 0, more: 0, coarse: 0 };
    fc.assert(
      fc.property(
        boxCase({ most: 24, narrowest: true, keep: true }),
        fc.constantFrom(...kinds),
        fc.constantFrom(ROUGH_EFFORT, { ...ROUGH_EFFORT, mostCells: 60 }),
        (drawn, kind, effort) => {
          const { box, limits, values, coin, rule } = drawn;
          const [best] = new kind.pricer([box], limits, [rule]).price(values, coin).worth;
          const rough = roughOf(drawn, kind, effort).price(values, coin);
          expect(rough.worth[0]).toBeGreaterThanOrEqual(best);
          const pattern = rough.patterns(0)[0]?.pattern;
          if (pattern !== undefined) {
            const own = pattern.counts.reduce(
              (sum, [piece, copies]) => sum + values[piece] * copies,
              coin * pattern.kept,
            );
            // Measured in steps, they may hold more than the area says.
            if (effort === ROUGH_EFFORT) expect(own).toBeCloseTo(rough.worth[0], 6);
          }
          if (effort !== ROUGH_EFFORT) seen.coarse++;
          else seen[rough.worth[0] < best + 1 ? 'same' : 'more']++;
        },
      ),
      { numRuns: 1500 },
    );
    expect(seen.same).toBeGreaterThan(100);
    expect(seen.more).toBeGreaterThan(100);
    expect(seen.coarse).toBeGreaterThan(400);
  });

  it('counts as kept all that is beside the pieces, less the trouble of one remnant', () => {
    const lays = [{ piece: 0, turned: false, length: 31, width: 21 }];
    const box: Box = { length: 101, width: 51, firstCuts: ['across'], lays };
    const limits = { kerf: 1, narrowest: 4, longestCut: Number.POSITIVE_INFINITY };
    const rule = { leastLength: 90, leastWidth: 40, coinsPerMillion: 10_000, trouble: 5 };
    const drawn = { box, limits, rule, values: [9], coin: 1 };
    const pricer = roughOf(drawn, kinds[0], ROUGH_EFFORT);
    const one = pricer.whole(0, { kind: 'lay', piece: 0, turned: false });
    // Of 5,000 square ticks, 600 are the piece; a hundred are worth a coin.
    expect(one).toMatchObject({ stockClass: 0, counts: [[0, 1]], kept: 39 });
    // Six pieces fit, each worth three coins more than its metal: 50 + 18 - 5.
    const { worth, patterns } = pricer.price([9], 1);
    expect(worth[0]).toBeCloseTo(63, 6);
    const [{ pattern }] = patterns(0);
    expect(pattern.counts).toEqual([[0, 6]]);
    expect(pattern.kept).toBeCloseTo(9, 6);
    expect(pattern.part).toMatchObject({ cuts: 'across', parts: [{ extent: 101 }] });
  });

  it('goes by the area once time is over', () => {
    fc.assert(
      fc.property(boxCase({ most: 24, keep: true }), fc.constantFrom(...kinds), (drawn, kind) => {
        const { box, limits, values, coin, rule } = drawn;
        const late = roughOf(drawn, kind, ROUGH_EFFORT, () => true).price(values, coin);
        const [best] = new kind.pricer([box], limits, [rule]).price(values, coin).worth;
        expect(late.worth[0]).toBeGreaterThanOrEqual(best);
        expect(late.patterns(0)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});
