export {
  type CutNode,
  type CutRectangle,
  type CuttingNode,
  CuttingTreeError,
  cuttingTree,
} from './cutting-tree.js';
export { gaugeChanges, gaugeSettings } from './gauge-changes.js';
export type {
  CostBound,
  CostParts,
  Cut,
  CuttingPlan,
  Layout,
  PlacedPiece,
  PlanEffort,
  PlanOutcome,
  Purchase,
  Remnant,
  SearchEnding,
} from './plan.js';
export { type PlanOptions, type PlanProgress, planCutting } from './plan-cutting.js';
export type {
  CuttingProblem,
  KeepRule,
  Metal,
  Offcut,
  Piece,
  Rolling,
  Shear,
  Sheet,
  Stages,
  Stock,
  Weights,
} from './problem.js';
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
