import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectBest, expectNotTooLittle } from '../box-solver/expect-best.test.support.js';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { GCUT1 } from '../published-examples.test.support.js';
import { FreePricer } from './free-pricer.js';

const free = { stages: 'free', pricer: FreePricer } as const;

/** A sheet of 250 x 250 and what all pieces cut from it are worth by their area. */
function mostArea(sizes: readonly (readonly [number, number])[], mayTurn: boolean): number {
  const lays = sizes.flatMap(([length, width], piece) => {
    const lay = { piece, turned: false, length, width };
    return mayTurn ? [lay, { piece, turned: true, length: width, width: length }] : [lay];
  });
  const box = { length: 250, width: 250, firstCuts: ['along', 'across'] as const, lays };
  const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
  const areas = sizes.map(([length, width]) => length * width);
  const priced = new FreePricer([box], limits).price(areas, 0);
  const counts = priced.patterns(0)[0]?.pattern?.counts ?? [];
  const cut = counts.reduce((sum, [piece, copies]) => sum + areas[piece] * copies, 0);
  expect(cut).toBe(priced.worth[0]);
  return cut;
}

describe('FreePricer', () => {
  // J.E. Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting",
  // JORS 36 (1985) 297-306, OR-Library instances gcut1 and gcut2; optima fixed and
  // turned as published by G. Cintra and Y. Wakabayashi (IME-USP).
  const gcut2 = [
    [120, 133],
    [135, 186],
    [86, 75],
    [103, 73],
    [66, 85],
    [135, 97],
    [91, 175],
    [131, 176],
    [71, 176],
    [153, 72],
    [87, 148],
    [168, 107],
    [118, 90],
    [140, 109],
    [132, 159],
    [152, 93],
    [135, 68],
    [121, 158],
    [68, 94],
    [155, 76],
  ] as const;

  it('gets the published area out of a sheet', () => {
    expect(mostArea(GCUT1, false)).toBe(56460);
    expect(mostArea(GCUT1, true)).toBe(58136);
    expect(mostArea(gcut2, false)).toBe(60536);
    expect(mostArea(gcut2, true)).toBe(60611);
  });

  it('is worth no less in a larger box, nor for larger values', () => {
    fc.assert(
      fc.property(boxCase(), fc.nat(5), fc.nat(5), (drawn, longer, wider) => {
        const { box, limits, values } = drawn;
        const unlimited = { ...limits, longestCut: Number.POSITIVE_INFINITY };
        const larger = { ...box, length: box.length + longer, width: box.width + wider };
        const pricer = new FreePricer([box, larger], unlimited);
        const [small, large] = pricer.price(values, 0).worth;
        expect(large).toBeGreaterThanOrEqual(small);
        const more = values.map((value, piece) => value + piece);
        expect(pricer.price(more, 0).worth[0]).toBeGreaterThanOrEqual(small);
      }),
    );
  });

  it('finds what trying every cut finds, whatever the kerf and the longest cut', () => {
    fc.assert(
      fc.property(boxCase(), (drawn) => expectBest(drawn, free)),
      { numRuns: 500 },
    );
  });

  it('finds what trying every cut finds where no strip may be too narrow', () => {
    fc.assert(
      fc.property(boxCase({ narrowest: true }), (drawn) => expectBest(drawn, free)),
      { numRuns: 500 },
    );
  });

  it('finds what trying every cut finds where remnants are worth keeping', () => {
    fc.assert(
      fc.property(boxCase({ narrowest: true, keep: true }), (drawn) => expectBest(drawn, free)),
      { numRuns: 500 },
    );
  });

  it('is never worth too little where there is no room for exactness', () => {
    expectNotTooLittle(free, 1000);
  });
});
