import type { CuttingPlan, Layout } from '../plan.js';
import type { CuttingProblem, Piece, Stock } from '../problem.js';
import { demandFaults } from './demand-faults.js';
import { numberFaults, pieceFaults, remnantFaults } from './layout-faults.js';
import { moneyFaults } from './money-faults.js';
import type { LayoutFault, PlanFault } from './plan-fault.js';
import { ruleFor } from './rack-value.js';
import { replayCuts } from './replay-cuts.js';

/**
 * Checks a plan against its problem, by means of its own: it shares no code with
 * the planner. Every cut is replayed with its kerf, every piece measured and
 * counted, every remnant valued, every sheet counted and paid.
 *
 * What it cannot see: whether a bound below the cost is a true one, and what the
 * planner says of its own effort.
 * @returns everything that does not hold; empty for a good plan
 */
export function verifyPlan(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  const stock = new Map(problem.stock.map((item) => [item.id, item]));
  const pieces = new Map(problem.pieces.map((item) => [item.id, item]));
  const inLayouts = plan.layouts.flatMap((layout, index) =>
    layoutFaults(problem, layout, stock.get(layout.stock), pieces).map((fault) => ({
      ...fault,
      layout: index,
    })),
  );
  return [...inLayouts, ...demandFaults(problem, plan), ...moneyFaults(problem, plan)];
}

function layoutFaults(
  problem: CuttingProblem,
  layout: Layout,
  stock: Stock | undefined,
  pieces: ReadonlyMap<string, Piece>,
): readonly LayoutFault[] {
  if (stock === undefined) {
    const message = `'${layout.stock}' is no stock of this problem`;
    return [{ code: 'unknown stock', message }];
  }
  return [
    ...numberFaults(layout, stock),
    ...pieceFaults(layout, stock, pieces),
    ...replayCuts(layout, stock, problem.shear),
    ...remnantFaults(layout, ruleFor(problem.keep, stock)),
  ];
}
