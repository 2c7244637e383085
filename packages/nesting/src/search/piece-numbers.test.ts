import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PieceNumbers } from './piece-numbers.js';

/** A demand, and two lots of pieces that are within it together. */
const twoLots = fc
  .array(fc.tuple(fc.nat(6), fc.nat(6), fc.nat(6)), { minLength: 1, maxLength: 8 })
  .map((drawn) => ({
    demand: drawn.map(([a, b, more]) => a + b + more),
    one: drawn.map(([a]) => a),
    other: drawn.map(([, b]) => b),
  }));

const countsOf = (copies: readonly number[]) =>
  copies.flatMap((own, piece): [number, number][] => (own > 0 ? [[piece, own]] : []));

describe('PieceNumbers', () => {
  it('tells the copies of each piece again, of two lots together too', () => {
    fc.assert(
      fc.property(twoLots, ({ demand, one, other }) => {
        const numbers = new PieceNumbers(demand);
        const sum = numbers.of(countsOf(one)) + numbers.of(countsOf(other));
        expect(numbers.copies(sum)).toEqual(one.map((own, piece) => own + other[piece]));
        expect(numbers.copies(numbers.all)).toEqual(demand);
        expect(numbers.copies(numbers.all - sum)).toEqual(
          demand.map((quantity, piece) => quantity - one[piece] - other[piece]),
        );
      }),
    );
  });

  it('has a number of its own for every lot', () => {
    const numbers = new PieceNumbers([2, 0, 3]);
    expect(numbers.size).toBe(12);
    const lots = Array.from({ length: 12 }, (_, number) => numbers.copies(number).join(' '));
    expect(new Set(lots).size).toBe(12);
  });

  it('knows where its numbers are no longer exact', () => {
    // 2^50 numbers; eight times as many are 2^53.
    const numbers = new PieceNumbers(Array(50).fill(1));
    expect(numbers.exact(7)).toBe(true);
    expect(numbers.exact(8)).toBe(false);
  });
});
