import type { CuttingProblem, Metal } from './problem.js';
import { metalKey } from './problem-checks/check-metal.js';

/** The pieces of one metal and thickness, with the stock that they can be cut from. */
export interface MetalPart {
  readonly metal: Metal;
  readonly problem: CuttingProblem;
}

/**
 * Parts a problem by metal and thickness, in the order of the pieces. Metals of
 * which nothing but spares is welcome are left out: none of their stock is used.
 */
export function byMetal(problem: CuttingProblem): readonly MetalPart[] {
  const parts = new Map<string, Metal>();
  for (const { metal, thickness, quantity } of problem.pieces) {
    if (quantity === 0) continue;
    const key = metalKey({ ...metalOf(metal, thickness) });
    if (!parts.has(key)) parts.set(key, metalOf(metal, thickness));
  }
  return [...parts].map(([key, metal]) => ({
    metal,
    problem: {
      ...problem,
      pieces: problem.pieces.filter((piece) => metalKey(piece) === key),
      stock: problem.stock.filter((stock) => metalKey(stock) === key),
    },
  }));
}

function metalOf(metal: string | undefined, thickness: number | undefined): Metal {
  return {
    ...(metal === undefined ? {} : { metal }),
    ...(thickness === undefined ? {} : { thickness }),
  };
}
