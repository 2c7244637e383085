import { byMetal } from './by-metal.js';
import { checkProblem } from './check-problem.js';
import { type Deadline, deadlineIn } from './deadline.js';
import type { CuttingPlan, Layout, PlanEffort, PlanOutcome, SearchEnding } from './plan.js';
import { type OneMetalPlan, planOneMetal } from './plan-one-metal.js';
import type { CuttingProblem } from './problem.js';
import { purchases } from './purchases.js';
import { type Engines, standardEngines } from './solvers/engine-choice.js';
import { verifyPlan } from './verify/verify-plan.js';

/** How far a planner has come. */
export interface PlanProgress {
  /** What it does now, or has just done. */
  readonly phase: string;
  /** Coins that the best plan so far costs; absent where there is none yet. */
  readonly cost?: number;
  /** Coins that no plan can cost less than. */
  readonly bound: number;
}

export interface PlanOptions {
  /** Seconds after which the best plan so far is returned; 60 when absent. */
  readonly timeLimitSeconds?: number;
  /** An `AbortSignal`, or what looks like one: calls planning off; the best plan so far is returned. */
  readonly signal?: { readonly aborted: boolean };
  /** Told of progress, of one metal after another. */
  readonly onProgress?: (progress: PlanProgress) => void;
  /** Starts the random numbers of the search; 1 when absent. The same plan for the same seed. */
  readonly seed?: number;
  /** The engines to use; the standard ones when absent. */
  readonly engines?: Engines;
  /** A clock in milliseconds; the machine's when absent. */
  readonly now?: () => number;
}

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
 * @throws ProblemError where the problem makes no sense as data
 */
export async function planCutting(
  problem: CuttingProblem,
  options: PlanOptions = {},
): Promise<PlanOutcome> {
  checkProblem(problem);
  const now = options.now ?? Date.now;
  const { signal, onProgress } = options;
  const time = deadlineIn(options.timeLimitSeconds ?? 60, now);
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
  const plans: OneMetalPlan[] = [];
  for (const [index, part] of parts.entries()) {
    const share = deadline.left() * (1 - 1 / (parts.length - index));
    const done = plans.reduce((sum, plan) => sum + plan.bound, 0);
    const plan = await planOneMetal({
      ...part,
      deadline: { left: () => deadline.left() - share },
      engines: options.engines ?? standardEngines,
      seed: options.seed ?? 1,
      ...(onProgress === undefined
        ? {}
        : {
            onProgress: (phase, cost, bound) =>
              onProgress({
                phase,
                bound: done + bound,
                ...(cost === undefined || !Number.isFinite(cost) ? {} : { cost: done + cost }),
              }),
          }),
    });
    if (plan.status !== 'planned') return plan;
    plans.push(plan);
  }
  const ending = signal?.aborted === true ? 'called off' : worstEnding(plans);
  return { status: 'planned', plan: verified(problem, plans, ending) };
}

/** From the best to the worst. */
const ENDINGS: readonly SearchEnding[] = [
  'bound met',
  'all patterns within the gap searched',
  'pattern limit',
  'time limit',
  'called off',
];

function worstEnding(plans: readonly OneMetalPlan[]): SearchEnding {
  return ENDINGS[Math.max(0, ...plans.map(({ ending }) => ENDINGS.indexOf(ending)))];
}

function verified(
  problem: CuttingProblem,
  plans: readonly OneMetalPlan[],
  ending: SearchEnding,
): CuttingPlan {
  const layouts = plans.flatMap((plan) => plan.layouts);
  const { buy, parts, cost } = purchases(layouts, problem);
  const sum = (of: (effort: OneMetalPlan['effort']) => number) =>
    plans.reduce((total, { effort }) => total + of(effort), 0);
  const effort: PlanEffort = {
    rounds: sum(({ rounds }) => rounds),
    patterns: sum(({ patterns }) => patterns),
    integerMasters: sum(({ integerMasters }) => integerMasters),
    nodes: sum(({ nodes }) => nodes),
    ending,
  };
  const bound = Math.min(
    cost,
    plans.reduce((total, plan) => total + plan.bound, 0),
  );
  const plan: CuttingPlan = {
    layouts,
    buy,
    cost,
    parts,
    spares: sparesIn(problem, layouts),
    bound: { cost: bound, proven: bound === cost },
    effort,
  };
  const faults = verifyPlan(problem, plan);
  if (faults.length > 0) {
    throw new Error(`the planner made a plan that does not hold: ${faults[0].message}`);
  }
  return plan;
}

/** What layouts cut beyond the demand. */
function sparesIn(problem: CuttingProblem, layouts: readonly Layout[]): CuttingPlan['spares'] {
  const made = new Map<string, number>();
  for (const { pieces, count } of layouts) {
    for (const { piece } of pieces) made.set(piece, (made.get(piece) ?? 0) + count);
  }
  return problem.pieces.flatMap(({ id, quantity }) => {
    const count = (made.get(id) ?? 0) - quantity;
    return count > 0 ? [{ piece: id, count }] : [];
  });
}
