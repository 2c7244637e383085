import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FreePricer } from '../free-guillotine/free-pricer.js';
import { ThreeStagePricer } from '../three-stage/three-stage-pricer.js';
import { DEFAULT_EFFORT } from './effort.js';
import { boxCase } from './random-box.test.support.js';

describe('BoxPricer', () => {
  it('bounds what time is over for by its area, and gives no pattern of it', () => {
    let more = 0;
    fc.assert(
      fc.property(
        boxCase({ most: 16, narrowest: true, keep: true }),
        fc.constantFrom(FreePricer, ThreeStagePricer),
        fc.nat(3),
        ({ box, limits, values, rule, coin }, Pricer, most) => {
          const boxes = [box, box, box];
          const rules = boxes.map(() => rule);
          const whole = new Pricer(boxes, limits, rules).price(values, coin);
          let asked = 0;
          const over = () => ++asked > most;
          const cut = new Pricer(boxes, limits, rules, DEFAULT_EFFORT, over).price(values, coin);
          boxes.forEach((_, index) => {
            if (index < most) {
              expect(cut.worth[index]).toBe(whole.worth[index]);
              expect(cut.patterns(index)).toEqual(whole.patterns(index));
            } else {
              expect(cut.worth[index]).toBeGreaterThanOrEqual(whole.worth[index]);
              expect(cut.patterns(index)).toEqual([]);
              if (cut.worth[index] > whole.worth[index]) more++;
            }
          });
        },
      ),
      { numRuns: 300 },
    );
    expect(more).toBeGreaterThan(100);
  });
});
