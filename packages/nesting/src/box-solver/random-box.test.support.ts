import fc from 'fast-check';
import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule, Rolling } from '../problem.js';

/** A small box with its limits and whole values of its pieces. */
export interface BoxCase {
  readonly box: Box;
  readonly limits: Limits;
  readonly values: readonly number[];
  readonly coin: number;
  readonly rule: KeepRule | undefined;
}

export interface BoxCaseRange {
  /** Most net ticks of a side; 24 when absent. */
  readonly most?: number;
  /** Whether strips may be too narrow. */
  readonly narrowest?: boolean;
  /** Whether remnants may be worth keeping. */
  readonly keep?: boolean;
  /** Kerfs to draw from. */
  readonly kerfs?: readonly number[];
}

/** Draws boxes with a few kinds of pieces, turned or not, and every limit there is. */
export function boxCase({
  most = 24,
  narrowest = false,
  keep = false,
  kerfs = [0, 0, 1, 2],
}: BoxCaseRange = {}): fc.Arbitrary<BoxCase> {
  const side = fc.integer({ min: most >> 2, max: most });
  const pieceSide = fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 2, max: most >> 1 }) },
    fc.integer({ min: 1, max: most }),
  );
  const piece = fc.record({
    length: pieceSide,
    width: pieceSide,
    lies: fc.constantFrom('unturned', 'turned', 'either'),
    value: fc.integer({ min: 0, max: 60 }),
  });
  return fc
    .record({
      length: side,
      width: side,
      pieces: fc.array(piece, { minLength: 1, maxLength: 5 }),
      kerf: fc.constantFrom(...kerfs),
      longestCut: fc.oneof(
        fc.constant(Number.POSITIVE_INFINITY),
        fc.integer({ min: 2, max: most }),
      ),
      narrowest: narrowest ? fc.integer({ min: 1, max: 5 }) : fc.constant(1),
      firstCuts: fc.constantFrom<readonly Rolling[]>(['along'], ['across'], ['along', 'across']),
      coin: fc.integer({ min: 0, max: 3 }),
      rule: fc.record({
        leastLength: fc.integer({ min: 1, max: most }),
        leastWidth: fc.integer({ min: 1, max: 8 }),
        coinsPerMillion: fc.integer({ min: 0, max: 300_000 }),
        millions: fc.constantFrom(1, 1, 1, 2, 3),
        trouble: fc.integer({ min: 0, max: 4 }),
      }),
    })
    .map(({ length, width, pieces, kerf, longestCut, narrowest, firstCuts, coin, rule }) => {
      const lays = pieces.flatMap(({ length: l, width: w, lies }, piece): BoxLay[] => {
        const unturned = { piece, turned: false, length: l + kerf, width: w + kerf };
        const turned = { piece, turned: true, length: w + kerf, width: l + kerf };
        return lies === 'unturned' ? [unturned] : lies === 'turned' ? [turned] : [unturned, turned];
      });
      const box = { length: length + kerf, width: width + kerf, firstCuts, lays };
      const values = pieces.map(({ value }) => value);
      const limits = { kerf, longestCut, narrowest };
      return { box, limits, values, coin, rule: keep ? rule : undefined };
    });
}
