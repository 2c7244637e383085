import type { CuttingProblem, Piece, Stock } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import { metalKey } from './check-metal.js';
import { MOST_ON_ONE } from './limits.js';

/**
 * Pieces may be so many and so small that one sheet holds more of them than a layout can list, by area.
 * @throws ProblemError for the first stock of which that is so
 */
export function checkCrowding({ pieces, stock, shear: { kerf = 0 } }: CuttingProblem): void {
  const gross = ({ length, width }: Piece | Stock) => (length + kerf) * (width + kerf);
  const byMetal = new Map<string, Piece[]>();
  for (const piece of [...pieces].sort((a, b) => gross(a) - gross(b))) {
    const key = metalKey(piece);
    const ofMetal = byMetal.get(key) ?? [];
    byMetal.set(key, ofMetal);
    ofMetal.push(piece);
  }
  stock.forEach((each, i) => {
    const held = mostHeld(byMetal.get(metalKey(each)) ?? [], gross(each), gross);
    if (held <= MOST_ON_ONE) return;
    const message =
      `is so large that it might hold ${held} of the pieces, of at most ${MOST_ON_ONE}; ` +
      'plan fewer of the smallest at once, or take out this size';
    throw new ProblemError('too many to compute', `stock[${i}]`, message, held);
  });
}

/** How many pieces an area might hold, the smallest first. */
function mostHeld(
  smallestFirst: readonly Piece[],
  area: number,
  gross: (piece: Piece) => number,
): number {
  let left = area;
  let held = 0;
  for (const piece of smallestFirst) {
    const wanted = piece.quantity + (piece.spares ?? 0);
    const copies = Math.min(wanted, Math.floor(left / gross(piece)));
    held += copies;
    if (copies < wanted) return held;
    left -= copies * gross(piece);
  }
  return held;
}
