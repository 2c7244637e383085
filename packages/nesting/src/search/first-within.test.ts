import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FirstWithin } from './first-within.js';

describe('FirstWithin', () => {
  it('finds what looking at one after another finds, sizes taken out or not', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 40 }),
        fc.array(fc.tuple(fc.nat(45), fc.nat(22), fc.boolean()), { maxLength: 30 }),
        (drawn, asked) => {
          const sizes = [...drawn];
          const tree = new FirstWithin(sizes);
          for (const [from, atMost, takeOut] of asked) {
            const place = sizes.findIndex((size, i) => i >= from && size <= atMost);
            expect(tree.from(from, atMost)).toBe(place);
            if (!takeOut || place < 0) continue;
            tree.remove(place);
            sizes[place] = Number.POSITIVE_INFINITY;
          }
        },
      ),
      { numRuns: 500 },
    );
  });
});
