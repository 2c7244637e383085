import type { CuttingProblem } from './problem.js';
import { ProblemError } from './problem-error.js';

/** Largest length in ticks: dynamic programmes hold one number for each tick. */
export const LONGEST = 200_000;
/** Largest quantity of one piece, and of one sheet. */
export const MOST = 1_000_000;
/** Largest price in coins. */
export const DEAREST = 100_000_000;

/**
 * Refuses a problem whose numbers are not what the types promise.
 * @throws ProblemError for the first fault, naming the field.
 */
export function checkProblem(problem: CuttingProblem): void {
  if (problem.pieces.length === 0) {
    throw new ProblemError('no pieces', 'pieces', 'is empty; at least one piece is needed');
  }
  if (problem.stock.length === 0) {
    throw new ProblemError('no stock', 'stock', 'is empty; at least one sheet or offcut is needed');
  }
  problem.pieces.forEach((piece, i) => {
    whole(piece.length, 1, LONGEST, `pieces[${i}].length`);
    whole(piece.width, 1, LONGEST, `pieces[${i}].width`);
    whole(piece.quantity, 1, MOST, `pieces[${i}].quantity`);
  });
  problem.stock.forEach((stock, i) => {
    whole(stock.length, 1, LONGEST, `stock[${i}].length`);
    whole(stock.width, 1, LONGEST, `stock[${i}].width`);
    if (stock.kind === 'offcut') return;
    whole(stock.price, 0, DEAREST, `stock[${i}].price`);
    whole(stock.onHand, 0, MOST, `stock[${i}].onHand`);
    if (stock.canBuy !== 'any') whole(stock.canBuy, 0, MOST, `stock[${i}].canBuy`);
  });
  if (problem.shear.longestCut !== undefined) {
    whole(problem.shear.longestCut, 1, Number.MAX_SAFE_INTEGER, 'shear.longestCut');
  }
  unique(problem.pieces, 'pieces');
  unique(problem.stock, 'stock');
}

function whole(value: number, least: number, most: number, path: string): void {
  if (!Number.isInteger(value) || value < least) {
    throw new ProblemError(
      'not a whole number',
      path,
      `must be a whole number of at least ${least}; got ${value}`,
    );
  }
  if (value > most) {
    throw new ProblemError(
      'too large to compute exactly',
      path,
      `must be at most ${most}; got ${value}`,
    );
  }
}

function unique(items: readonly { readonly id: string }[], path: string): void {
  const seen = new Set<string>();
  items.forEach((item, i) => {
    if (seen.has(item.id)) {
      throw new ProblemError(
        'id used twice',
        `${path}[${i}].id`,
        `'${item.id}' stands for an earlier one already; every id must be its own`,
      );
    }
    seen.add(item.id);
  });
}
