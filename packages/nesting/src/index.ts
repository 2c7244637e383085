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
export { type PlanOptions, planCutting } from './plan-cutting.js';
export type { CuttingProblem, Offcut, Piece, Shear, Sheet, Stock } from './problem.js';
export { ProblemError, type ProblemFault } from './problem-error.js';
export { type Engines, standardEngines } from './solvers/engine-choice.js';
export type {
  Answer,
  Engine,
  LinearColumn,
  LinearModel,
  LinearRow,
  Session,
  SolveLimits,
} from './solvers/linear-model.js';
export type { PlanFault } from './verify/plan-fault.js';
export { verifyPlan } from './verify/verify-plan.js';
