import type { MetalPart } from './by-metal.js';
import type { CuttingPlan, Layout, PlanEffort, SearchEnding } from './plan.js';
import type { PlanProgress } from './plan-cutting.js';
import type { OneMetalPlan } from './plan-one-metal.js';
import type { CuttingProblem } from './problem.js';
import { purchases } from './purchases.js';
import type { SearchStep } from './search/search.js';
import { verifyPlan } from './verify/verify-plan.js';

/** From the best to the worst. */
const ENDINGS: readonly SearchEnding[] = [
  'bound met',
  'all patterns within the gap searched',
  'pattern limit',
  'time limit',
  'called off',
];

interface Known {
  readonly plan: OneMetalPlan;
  readonly cost: number;
}

/** The plan of a problem, put together from the best so far of each of its metals. */
export class WholePlan {
  readonly #problem: CuttingProblem;
  readonly #parts: readonly MetalPart[];
  readonly #known: (Known | undefined)[];

  constructor(problem: CuttingProblem, parts: readonly MetalPart[]) {
    this.#problem = problem;
    this.#parts = parts;
    this.#known = parts.map(() => undefined);
  }

  /** Takes a plan of the metal at this index in place of the one before. */
  set(index: number, plan: OneMetalPlan): void {
    const { cost } = purchases(plan.layouts, this.#parts[index].problem);
    this.#known[index] = { plan, cost };
  }

  /** How far all has come when the search of one metal has come so far. */
  progress(index: number, step: SearchStep): PlanProgress {
    const others = this.#known.filter((_, i) => i !== index);
    const sum = (of: (known: Known) => number, own: number) =>
      others.reduce((total, known) => total + (known === undefined ? 0 : of(known)), own);
    const cost = sum((known) => known.cost, step.cost);
    return {
      phase: step.phase,
      bound: sum(({ plan }) => plan.bound, step.bound),
      columns: sum(({ plan }) => plan.effort.patterns, step.columns),
      ...(others.includes(undefined) || !Number.isFinite(cost) ? {} : { cost }),
    };
  }

  worstEnding(): SearchEnding {
    const endings = this.#known.map((known) => (known ? ENDINGS.indexOf(known.plan.ending) : 0));
    return ENDINGS[Math.max(0, ...endings)];
  }

  /** @returns undefined where a metal has no plan yet */
  verified(ending: SearchEnding): CuttingPlan | undefined {
    const plans = this.#known.flatMap((known) => known?.plan ?? []);
    return plans.length < this.#parts.length ? undefined : verified(this.#problem, plans, ending);
  }
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
