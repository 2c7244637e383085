import fc from 'fast-check';
import { describe, it } from 'vitest';
import { expectBest, expectNotTooLittle } from '../box-solver/expect-best.test.support.js';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { FreePricer } from './free-pricer.js';

const free = { stages: 'free', pricer: FreePricer } as const;

describe('FreePricer', () => {
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
