import type { CuttingPlan, Layout, PlanOutcome } from './plan.js';
import { type PlanOptions, planCutting } from './plan-cutting.js';
import type { CuttingProblem, Offcut, Piece, Sheet } from './problem.js';

/** A piece that may turn. */
export function piece(
  id: string,
  length: number,
  width: number,
  quantity: number,
  more: Partial<Piece> = {},
): Piece {
  return { id, length, width, quantity, mayTurn: true, ...more };
}

/** A sheet of which any number can be bought for 100 coins each. */
export function sheet(id: string, length: number, width: number, more: Partial<Sheet> = {}): Sheet {
  return { kind: 'sheet', id, length, width, price: 100, onHand: 0, canBuy: 'any', ...more };
}

export function offcut(
  id: string,
  length: number,
  width: number,
  more: Partial<Offcut> = {},
): Offcut {
  return { kind: 'offcut', id, length, width, ...more };
}

export const either = { firstCut: 'either' } as const;

/** One-dimensional stock cutting is the case where every piece is as wide as the stock. */
export function barProblem(
  length: number,
  pieces: readonly (readonly [length: number, quantity: number])[],
): CuttingProblem {
  return {
    pieces: pieces.map(([size, quantity]) =>
      piece(`${size}`, size, 1, quantity, { mayTurn: false }),
    ),
    stock: [sheet('bar', length, 1, { price: 1 })],
    shear: { firstCut: 'along' },
  };
}

/** @throws Error where the outcome is no plan */
export function planOf(outcome: PlanOutcome): CuttingPlan {
  if (outcome.status !== 'planned') throw new Error(`expected a plan, got '${outcome.status}'`);
  return outcome.plan;
}

export async function planned(
  problem: CuttingProblem,
  options: PlanOptions = {},
): Promise<CuttingPlan> {
  return planOf(await planCutting(problem, options));
}

/** How often a piece is cut in all. */
export function copiesOf(id: string, layouts: readonly Layout[]): number {
  return layouts.reduce(
    (sum, layout) => sum + layout.count * layout.pieces.filter((p) => p.piece === id).length,
    0,
  );
}

/** How many of each stock are cut. */
export function stockUsed(layouts: readonly Layout[]): Readonly<Record<string, number>> {
  const used: Record<string, number> = {};
  for (const { stock, count } of layouts) used[stock] = (used[stock] ?? 0) + count;
  return used;
}
