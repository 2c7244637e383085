import { byMetal } from './by-metal.js';
import { checkOptions } from './check-options.js';
import { checkProblem } from './check-problem.js';
import { type Deadline, deadlineIn, shareOf } from './deadline.js';
import type { CuttingPlan, PlanOutcome } from './plan.js';
import { planOneMetal } from './plan-one-metal.js';
import type { CuttingProblem } from './problem.js';
import { type Engines, standardEngines } from './solvers/engine-choice.js';
import { stoppable } from './solvers/stoppable.js';
import { WholePlan } from './whole-plan.js';

/** How far a planner has come. */
export interface PlanProgress {
  /** What it does now, or has just done. */
  readonly phase: string;
  /** Coins that the best plan so far costs; absent where there is none yet. */
  readonly cost?: number;
  /** Coins that no plan can cost less than. */
  readonly bound: number;
  /** Patterns so far. */
  readonly columns: number;
}

/** Seconds that planning may take where the caller names none. */
export const USUAL_SECONDS = 60;

export interface PlanOptions {
  /** Seconds after which the best plan so far is returned; `USUAL_SECONDS` when absent. */
  readonly timeLimitSeconds?: number;
  /** An `AbortSignal`, or what looks like one: calls planning off; the best plan so far is returned. */
  readonly signal?: { readonly aborted: boolean };
  /** Told of progress, of one metal after another. */
  readonly onProgress?: (progress: PlanProgress) => void;
  /**
   * Told of every plan that costs less than those before: verified, with the bound
   * so far, but without spares and not yet made less trouble. The first comes early.
   */
  readonly onPlan?: (plan: CuttingPlan) => void;
  /** Starts the random numbers of the search; 1 when absent. The same plan for the same seed. */
  readonly seed?: number;
  /** The engines to use; the standard ones when absent. */
  readonly engines?: Engines;
  /** A clock in milliseconds; the machine's when absent. */
  readonly now?: () => number;
}

/** Leaves time for the first plan alone, which takes none of the search's. */
const OVER: Deadline = { left: () => 0 };

/**
 * Plans how to cut the pieces from the stock by guillotine cuts: in two stages
 * with a last trim, three, or without limit, within what the machine can do.
 *
 * First the coins are made least: what is bought and the book value of what is
 * used, less the value of the offcuts that go to the rack. Among plans of that
 * cost the metal used up is made less, offcuts before sheets, where remnants have
 * no value; then the layouts, the changes of the gauge and the cuts. Every plan
 * has passed `verifyPlan`.
 *
 * The bound is on the coins, for this kind of cutting and the machine's limits.
 * @throws ProblemError where the problem, or a number among the options, makes no sense
 */
export async function planCutting(
  problem: CuttingProblem,
  options: PlanOptions = {},
): Promise<PlanOutcome> {
  checkProblem(problem);
  checkOptions(options);
  const now = options.now ?? Date.now;
  const { signal, onProgress, onPlan } = options;
  const time = deadlineIn(options.timeLimitSeconds ?? USUAL_SECONDS, now);
  const deadline: Deadline = { left: () => (signal?.aborted === true ? 0 : time.left()) };
  // Spares alone are no reason to cut anything.
  const parts = byMetal(problem).filter((part) =>
    part.problem.pieces.some(({ quantity }) => quantity > 0),
  );
  const without = parts.filter((part) => part.problem.stock.length === 0);
  if (without.length > 0) {
    const pieces = without.flatMap((part) => part.problem.pieces.map(({ id }) => id));
    return { status: 'no stock of the metal', pieces };
  }
  const engines = stoppable(options.engines ?? standardEngines, () => deadline.left() <= 0);
  const seed = options.seed ?? 1;
  const whole = new WholePlan(problem, parts);
  if (parts.length > 1) {
    // A plan of every metal to start with: there is a whole one early, and a metal
    // that cannot be cut is told of before the others are searched.
    for (const [index, part] of parts.entries()) {
      const plan = await planOneMetal({ ...part, deadline: OVER, engines, seed });
      if (plan.status === 'planned') whole.set(index, plan);
      else if (plan.status !== 'none found') return plan;
    }
  }
  let least = Number.POSITIVE_INFINITY;
  const handOut = () => {
    const plan = whole.verified('called off');
    if (plan === undefined || plan.cost >= least) return;
    least = plan.cost;
    onPlan?.(plan);
  };
  for (const [index, part] of parts.entries()) {
    const plan = await planOneMetal({
      ...part,
      deadline: shareOf(deadline, 1 / (parts.length - index)),
      engines,
      seed,
      ...(onProgress && { onProgress: (step) => onProgress(whole.progress(index, step)) }),
      ...(onPlan && {
        onPlan: (better) => {
          whole.set(index, better);
          handOut();
        },
      }),
    });
    if (plan.status !== 'planned') return plan;
    whole.set(index, plan);
  }
  const ending = whole.worstEnding();
  const early = signal?.aborted === true && ending === 'time limit';
  const plan = whole.verified(early ? 'called off' : ending);
  return plan === undefined ? { status: 'none found' } : { status: 'planned', plan };
}
