export type {
  CostBound,
  Cut,
  CuttingPlan,
  Layout,
  PlacedPiece,
  PlanEffort,
  PlanOutcome,
  Purchase,
  Remnant,
} from './plan.js';
export type { CuttingProblem, Offcut, Piece, Shear, Sheet, Stock } from './problem.js';
