import fc from 'fast-check';
import type { CuttingProblem, Piece, Stock } from './problem.js';

export interface ProblemSizes {
  readonly pieceTypes: number;
  readonly quantity: number;
  readonly sheetSizes: number;
  readonly offcuts: number;
  /** Longest side of a sheet; pieces go up to a little over half of it. */
  readonly side: number;
}

/** Random cutting problems up to the given sizes; some cannot be cut. */
export function randomProblem(sizes: ProblemSizes): fc.Arbitrary<CuttingProblem> {
  const side = fc.integer({ min: Math.ceil(sizes.side * 0.4), max: sizes.side });
  const pieceSide = fc.integer({ min: 1, max: Math.ceil(sizes.side * 0.55) });
  const piece = fc.record({
    length: pieceSide,
    width: pieceSide,
    quantity: fc.integer({ min: 1, max: sizes.quantity }),
    mayTurn: fc.boolean(),
  });
  const canBuy = fc.oneof(
    { weight: 3, arbitrary: fc.constant('any' as const) },
    { weight: 1, arbitrary: fc.integer({ min: 0, max: 3 }) },
  );
  const sheet = fc.record({
    length: side,
    width: side,
    price: fc.integer({ min: 0, max: 12 }),
    onHand: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 2 })),
    canBuy,
  });
  const offcut = fc.record({ length: side, width: side });
  const shear = fc.record(
    {
      firstCut: fc.constantFrom('along' as const, 'across' as const, 'either' as const),
      longestCut: fc.integer({ min: Math.ceil(sizes.side * 0.7), max: sizes.side }),
    },
    { requiredKeys: ['firstCut'] },
  );
  return fc
    .record({
      pieces: fc.array(piece, { minLength: 1, maxLength: sizes.pieceTypes }),
      sheets: fc.array(sheet, { minLength: 1, maxLength: sizes.sheetSizes }),
      offcuts: fc.array(offcut, { maxLength: sizes.offcuts }),
      shear,
    })
    .map(({ pieces, sheets, offcuts, shear }) => ({
      pieces: pieces.map((entry, i): Piece => ({ id: `piece ${i + 1}`, ...entry })),
      stock: [
        ...sheets.map((entry, i): Stock => ({ kind: 'sheet', id: `sheet ${i + 1}`, ...entry })),
        ...offcuts.map((entry, i): Stock => ({ kind: 'offcut', id: `offcut ${i + 1}`, ...entry })),
      ],
      shear,
    }));
}
