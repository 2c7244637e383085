import type { CuttingProblem, Piece, Stock } from './problem.js';

/** One way in which a piece may lie on one stock. */
export interface Lay {
  /** The code of one such piece and nothing else. */
  readonly code: number;
  /** Along the stock's length, as it lies. */
  readonly length: number;
  readonly width: number;
}

/**
 * The ways in which pieces may lie on the stock, and how combinations are
 * written as one number: the digit of a piece has as many values as its quantity
 * allows.
 */
export function layable(
  problem: CuttingProblem,
  stock: Stock,
): { readonly lays: readonly Lay[]; readonly sizes: readonly number[] } {
  const lays: Lay[] = [];
  let code = 1;
  const sizes = problem.pieces.map((piece) => {
    const ways = sameMetal(piece, stock) && piece.quantity > 0 ? waysToLie(piece, stock) : [];
    lays.push(...ways.map((way) => ({ code, ...way })));
    const size = ways.length > 0 ? piece.quantity + 1 : 1;
    code *= size;
    return size;
  });
  return { lays, sizes };
}

function sameMetal(piece: Piece, stock: Stock): boolean {
  return piece.metal === stock.metal && piece.thickness === stock.thickness;
}

function waysToLie(piece: Piece, stock: Stock): readonly { length: number; width: number }[] {
  const ways: { length: number; width: number }[] = [];
  if (piece.rolling === undefined || piece.rolling === stock.rolling) {
    ways.push({ length: piece.length, width: piece.width });
  }
  const crossed = stock.rolling !== undefined && stock.rolling !== piece.rolling;
  if (piece.mayTurn && (piece.rolling === undefined || crossed)) {
    ways.push({ length: piece.width, width: piece.length });
  }
  return ways;
}

/** How many of each piece a code stands for. */
export function decoded(code: number, sizes: readonly number[]): readonly number[] {
  let rest = code;
  return sizes.map((size) => {
    const digit = rest % size;
    rest = (rest - digit) / size;
    return digit;
  });
}
