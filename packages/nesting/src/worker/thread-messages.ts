import type { CuttingPlan, PlanOutcome } from '../plan.js';
import type { PlanProgress } from '../plan-cutting.js';
import type { CuttingProblem } from '../problem.js';
import type { ProblemFault } from '../problem-error.js';

/** What the planning thread starts with. */
export interface ThreadTask {
  readonly problem: CuttingProblem;
  readonly timeLimitSeconds: number | undefined;
  readonly seed: number | undefined;
  /** One 32-bit integer: anything but 0 calls planning off. The thread is too busy for messages. */
  readonly calledOff: SharedArrayBuffer;
}

/** What the planning thread tells. */
export type ThreadMessage =
  | { readonly kind: 'progress'; readonly progress: PlanProgress }
  | { readonly kind: 'plan'; readonly plan: CuttingPlan }
  | { readonly kind: 'outcome'; readonly outcome: PlanOutcome }
  | { readonly kind: 'refused'; readonly refusal: Refusal };

/** A `ProblemError` taken apart, since what is copied between threads loses its class. */
export interface Refusal {
  readonly code: ProblemFault;
  readonly path: string;
  /** Without the path before it. */
  readonly message: string;
  readonly received: unknown;
}
