import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Combinations } from './combinations.js';

const bounds = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 4 });

describe('Combinations', () => {
  it('writes each combination as a number of its own', () => {
    fc.assert(
      fc.property(bounds, (most) => {
        const combinations = new Combinations(most);
        const all = Array.from({ length: combinations.size }, (_, n) => combinations.counts(n));
        expect(new Set(all.map(String)).size).toBe(most.reduce((size, m) => size * (m + 1), 1));
        expect(all[0]).toEqual(most.map(() => 0));
        most.forEach((copies, piece) => {
          const one = combinations.counts(combinations.one(piece));
          expect(one).toEqual(most.map((_, i) => (i === piece ? Math.min(1, copies) : 0)));
        });
      }),
    );
  });

  it('adds up to the most of each piece, one copy at a time or many', () => {
    fc.assert(
      fc.property(bounds, fc.nat(), fc.nat(), (most, x, y) => {
        const combinations = new Combinations(most);
        const [a, b] = [x % combinations.size, y % combinations.size];
        const [one, other] = [combinations.counts(a), combinations.counts(b)];
        expect(combinations.counts(combinations.sum(a, b))).toEqual(
          most.map((copies, i) => Math.min(copies, one[i] + other[i])),
        );
        const larger = combinations.withOneMore(a).map((c) => combinations.counts(c));
        expect(larger).toEqual(
          most.flatMap((copies, i) =>
            one[i] < copies ? [one.map((count, j) => (i === j ? count + 1 : count))] : [],
          ),
        );
      }),
    );
  });
});
