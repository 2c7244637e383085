import type { CuttingPlan } from '../plan.js';
import type { CuttingProblem } from '../problem.js';
import type { PlanFault } from './plan-fault.js';

/** Pieces that are not cut exactly as often as they are wanted, and as spares of theirs are listed. */
export function demandFaults(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  const made = new Map<string, number>();
  for (const layout of plan.layouts) {
    for (const { piece } of layout.pieces) {
      made.set(piece, (made.get(piece) ?? 0) + layout.count);
    }
  }
  const faults: PlanFault[] = [];
  const listed = new Map<string, number>();
  const allowed = new Map(problem.pieces.map((piece) => [piece.id, piece.spares ?? 0]));
  const wrong = (message: string) => faults.push({ code: 'wrong spares', message });
  for (const { piece, count } of plan.spares) {
    const most = allowed.get(piece) ?? 0;
    if (listed.has(piece)) wrong(`spares of '${piece}' are listed twice`);
    if (!Number.isInteger(count) || count < 1 || count > most) {
      wrong(`${count} spares of '${piece}' are listed; there may be 1 to ${most}`);
    }
    listed.set(piece, (listed.get(piece) ?? 0) + count);
  }
  for (const piece of problem.pieces) {
    const count = made.get(piece.id) ?? 0;
    const spares = listed.get(piece.id) ?? 0;
    if (count === piece.quantity + spares) continue;
    const message = `'${piece.id}' is wanted ${piece.quantity} times with ${spares} spares, and cut ${count} times`;
    faults.push({ code: 'demand not met exactly', message });
  }
  return faults;
}
