import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { addBand } from './add-band.test.support.js';
import { groundOf } from './ground.test.support.js';
import { OpenBandPlan } from './open-bands.js';

const LENGTHS = [21, 26, 34];
const LENGTH = 100;
const WIDTH = 10;
const BANDS = [
  [4, 0, 0],
  [2, 2, 0],
  [0, 1, 2],
  [1, 0, 2],
  [0, 3, 0],
  [1, 1, 1],
];
const SLOTS = 12;
const DEMAND = [14, 11, 9];
const LIMITS = { near: 1e-6, steps: 100 };

function opened(): OpenBandPlan {
  const { ground } = groundOf({
    pieces: LENGTHS.map((length, i) => piece(`p${i}`, length, WIDTH, DEMAND[i])),
    stock: [sheet('s', LENGTH, 3 * WIDTH, { price: 7 })],
    shear: { firstCut: 'along' },
  });
  const book = ground.newBook();
  for (const copies of BANDS) addBand(book, LENGTHS, copies, WIDTH);
  const bands = [...book.bands.keys()];
  return new OpenBandPlan({ book, bands, slots: [SLOTS], demand: DEMAND }, LENGTHS);
}

const changes = fc.array(
  fc.record({ place: fc.nat(BANDS.length - 1), count: fc.integer({ min: 0, max: 2 }) }),
  { minLength: 1, maxLength: 6 },
);

/** Takes some bands, and refuses the others, as far as they fit. */
function change(plan: OpenBandPlan, some: readonly { place: number; count: number }[]): void {
  for (const { place, count } of some) {
    if (count === 0) plan.refuse(place, true);
    else plan.take(place, Math.min(count, plan.fits(place)));
  }
}

describe('plan of open bands', () => {
  it('goes back to a state as if nothing had come after it', () => {
    let apart = 0;
    fc.assert(
      fc.property(changes, changes, (first, then) => {
        const plan = opened();
        plan.solve(LIMITS);
        change(plan, first);
        const entropy = plan.solve(LIMITS);
        const state = plan.state();
        const before = {
          left: plan.left,
          amounts: [...plan.amounts],
          multipliers: [...plan.multipliers],
          fits: BANDS.map((_, place) => plan.fits(place)),
          taken: [...plan.result().taken],
        };
        change(plan, then);
        plan.solve(LIMITS);
        if (plan.left !== before.left) apart++;
        plan.goBackTo(state);
        expect({
          left: plan.left,
          amounts: [...plan.amounts],
          multipliers: [...plan.multipliers],
          fits: BANDS.map((_, place) => plan.fits(place)),
          taken: [...plan.result().taken],
        }).toEqual(before);
        const again = plan.solve(LIMITS);
        if (entropy === undefined) expect(again).toBeUndefined();
        else expect(again).toBeCloseTo(entropy, 4);
      }),
    );
    expect(apart).toBeGreaterThan(30);
  });

  it('expects as many bands as there are slots, and the pieces that are wanted', () => {
    const plan = opened();
    expect(plan.left).toBe(SLOTS);
    expect(plan.solve(LIMITS)).toBeGreaterThan(0);
    const inSlots = plan.amounts.subarray(0, plan.places).reduce((sum, n) => sum + n, 0);
    expect(inSlots).toBeLessThan(SLOTS + 1e-3);
    DEMAND.forEach((wanted, i) => {
      const cut = BANDS.reduce((sum, copies, place) => sum + copies[i] * plan.amounts[place], 0);
      expect(cut).toBeGreaterThan(wanted - 1e-3);
    });
  });
});
