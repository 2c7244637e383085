import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ListedFace } from '../pattern/strip-lister.js';
import { cheapestSum } from './cheapest-sum.js';
import { PieceNumbers } from './piece-numbers.js';
import { Steps } from './steps.js';

const face: ListedFace = { box: 0, cuts: 'along', breadth: 10, strips: [], rests: [] };

/** Copies of two kinds of pieces, and what is lost by cutting them. */
interface Drawn {
  readonly copies: readonly [number, number];
  readonly loss: number;
}

interface DrawnClass {
  readonly least: number;
  readonly more: number;
  /** By the count of sheets. */
  readonly own: readonly number[];
  readonly yields: readonly Drawn[];
}

const DEMAND = [4, 3];
const ENDLESS = { left: () => 1 };

const drawnClass: fc.Arbitrary<DrawnClass> = fc.record({
  least: fc.nat(1),
  more: fc.nat(2),
  own: fc.array(fc.nat(6), { minLength: 4, maxLength: 4 }),
  yields: fc
    .array(
      fc.record({ copies: fc.tuple(fc.nat(DEMAND[0]), fc.nat(DEMAND[1])), loss: fc.nat(12) }),
      { maxLength: 8 },
    )
    .map((drawn) => {
      const each = new Map(drawn.map((own) => [own.copies.join(' '), own]));
      return [...each.values()].sort((a, b) => a.loss - b.loss);
    }),
});

/** Tries every choice of sheets. */
function leastOfAll(classes: readonly DrawnClass[], wanted: readonly number[]): number {
  const [first, ...others] = classes;
  if (first === undefined) {
    return wanted.every((left) => left === 0) ? 0 : Number.POSITIVE_INFINITY;
  }
  const sheets = (count: number, left: readonly number[]): number => {
    if (left.some((own) => own < 0)) return Number.POSITIVE_INFINITY;
    if (count === 0) return leastOfAll(others, left);
    return Math.min(
      Number.POSITIVE_INFINITY,
      ...first.yields.map(({ copies, loss }) => {
        return (
          loss +
          sheets(
            count - 1,
            left.map((own, piece) => own - copies[piece]),
          )
        );
      }),
    );
  };
  let least = Number.POSITIVE_INFINITY;
  for (let count = first.least; count <= first.least + first.more; count++) {
    least = Math.min(least, first.own[count] + sheets(count, wanted));
  }
  return least;
}

function sumOf(classes: readonly DrawnClass[], gap: number, steps = 1e6) {
  const numbers = new PieceNumbers(DEMAND);
  const yielding = classes.map(({ least, more, own, yields }) => ({
    least,
    most: least + more,
    lossOf: (count: number) => own[count],
    yields: yields.map(({ copies, loss }) => ({
      pieces: numbers.of([
        [0, copies[0]],
        [1, copies[1]],
      ]),
      loss,
      face,
      strips: [],
    })),
  }));
  return { numbers, sum: cheapestSum(yielding, numbers, gap, new Steps(steps, ENDLESS)) };
}

describe('cheapestSum', () => {
  it('loses as little as the best of all choices, or says that none loses so little', () => {
    const seen = { found: 0, none: 0 };
    fc.assert(
      fc.property(
        fc.array(drawnClass, { minLength: 1, maxLength: 3 }),
        fc.nat(40),
        (classes, gap) => {
          const { numbers, sum } = sumOf(classes, gap);
          const least = leastOfAll(classes, DEMAND);
          if (least > gap) {
            expect(sum).toBe('none');
            seen.none++;
            return;
          }
          if (sum === undefined || sum === 'none') return expect.fail('nothing was found');
          expect(sum.loss).toBe(least);
          const pieces = sum.yields.reduce((total, found) => total + found.pieces, 0);
          expect(numbers.copies(pieces)).toEqual(DEMAND);
          seen.found++;
        },
      ),
      { numRuns: 2000, seed: 5 },
    );
    expect(seen.found).toBeGreaterThan(300);
    expect(seen.none).toBeGreaterThan(300);
  });

  it('gives up where there is too much to look through', () => {
    const yields = [
      { copies: [1, 1], loss: 0 },
      { copies: [1, 0], loss: 0 },
    ] as const;
    const classes = [{ least: 0, more: 3, own: [0, 0, 0, 0], yields }];
    expect(sumOf(classes, 5, 1000).sum).not.toBeUndefined();
    expect(sumOf(classes, 5, 3).sum).toBeUndefined();
  });

  it('finds nothing where there is no stock', () => {
    expect(sumOf([], 10).sum).toBe('none');
  });
});
