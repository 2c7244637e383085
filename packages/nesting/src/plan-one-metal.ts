import { assignStock } from './assign-stock.js';
import { type Deadline, shareOf } from './deadline.js';
import { leastMetal, leastMoney, metal, money, totalCost } from './master/objective.js';
import { type StockClass, stockClasses } from './master/stock-class.js';
import { MetalGrounds } from './metal-grounds.js';
import { misfits } from './misfits.js';
import {
  type CuttingRules,
  cuttingRules,
  type FillBox,
  keepRuleFor,
} from './pattern/cutting-rules.js';
import { keptValue } from './pattern/kept-value.js';
import type { Layout, PlanEffort, PlanOutcome, SearchEnding } from './plan.js';
import { planningInTwoStages } from './planning-in-two-stages.js';
import { PlanningWithoutValue } from './planning-without-value.js';
import type { CuttingProblem, Metal } from './problem.js';
import { keptCoins, type Planned, sheetsUsed } from './search/planned.js';
import { type SearchStep, search } from './search/search.js';
import type { Engines } from './solvers/engine-choice.js';
import { addSpares } from './spares/add-spares.js';
import { tidy } from './tidy/tidy.js';
import { withoutSurplus } from './without-surplus.js';

export interface OneMetalRequest {
  /** Pieces and stock of one metal and thickness. */
  readonly problem: CuttingProblem;
  readonly metal: Metal;
  readonly deadline: Deadline;
  readonly engines: Engines;
  readonly seed: number;
  readonly onProgress?: (step: SearchStep) => void;
  /** Told of every plan that costs less than those before, as if the search ended with it. */
  readonly onPlan?: (plan: OneMetalPlan) => void;
}

/** Layouts of one metal, with what was proven of them. */
export interface OneMetalPlan {
  readonly status: 'planned';
  readonly layouts: readonly Layout[];
  readonly bound: number;
  readonly effort: Omit<PlanEffort, 'ending'>;
  readonly ending: SearchEnding;
}

/**
 * Share of the time left that the search for the least metal may take after that for the least
 * money: far more than it needs, since it is brief by counts.
 */
const METAL_SHARE = 0.25;

/** Share of the time in which pieces are ruled out that cannot be cut from any of the stock. */
const MISFITS_SHARE = 0.3;

/** Plans the pieces of one metal. */
export async function planOneMetal(
  request: OneMetalRequest,
): Promise<OneMetalPlan | Exclude<PlanOutcome, { status: 'planned' }>> {
  const { problem, deadline, engines } = request;
  const rules = cuttingRules(problem);
  const rule = keepRuleFor(request.metal, problem.keep);
  const value = (length: number, width: number) => keptValue(length, width, rule);
  const worth = rule !== undefined && rule.coinsPerMillion > 0 ? rule : undefined;
  const classes = stockClasses(problem, rules.limits, value);
  const boxes = classes.map(({ box }) => ({ ...box, keep: rule }));
  const ruling = shareOf(deadline, MISFITS_SHARE);
  const unfit = misfits(problem, classes, rules, () => ruling.left() <= 0);
  if (unfit !== undefined) return unfit;
  const demand = problem.pieces.map((piece) => piece.quantity);
  const effort = { rounds: 0, integerMasters: 0, nodes: 0 };
  const over = () => deadline.left() <= 0;
  const setting = { classes, boxes, demand, rules, engines, effort, over };
  const grounds = new MetalGrounds({ ...setting, worth });
  const { seed, onProgress, onPlan } = request;
  const planOf = (
    sheets: readonly Planned[],
    bound: number,
    ending: SearchEnding,
  ): OneMetalPlan => ({
    status: 'planned',
    layouts: assignStock(sheets, problem, classes),
    bound,
    effort: { ...effort, patterns: grounds.book.bands.length + grounds.book.sheets.length },
    ending,
  });
  const valueless = (problem: CuttingProblem) =>
    worth && new PlanningWithoutValue({ problem, worth, engines, effort, over, seed });
  const inTwoStages =
    rules.stages === 2
      ? undefined
      : planningInTwoStages({ ...setting, worth }, valueless(twoStages(problem)), seed);
  const { start } = grounds;
  const found = await search({
    ground: grounds.for(leastMoney, deadline, { withoutValue: valueless(problem), inTwoStages }),
    known: start,
    brief: false,
    seed,
    ...(onProgress === undefined ? {} : { onProgress }),
    ...(onPlan === undefined
      ? {}
      : {
          onBetter: (better, bound) =>
            onPlan(planOf(withoutSurplus(better, demand, boxes, rules), bound, 'called off')),
        }),
  });
  if (found.bound === Number.POSITIVE_INFINITY) return { status: 'not enough stock' };
  if (found.planned === undefined) return { status: 'none found' };
  let { planned } = found;
  if (worth === undefined && anyChoice(classes) && deadline.left() > 0) {
    const own = shareOf(deadline, METAL_SHARE);
    const less = await search({
      ground: grounds.for(leastMetal(found.cost), own),
      known: planned,
      brief: true,
      seed,
    });
    planned = less.planned ?? planned;
  }
  const sheets = finished(planned, found.cost, request, classes, boxes, rules);
  return planOf(sheets, found.bound, found.ending);
}

/** The same problem with all stock cut in two stages. */
function twoStages(problem: CuttingProblem): CuttingProblem {
  return { ...problem, shear: { ...problem.shear, stages: 2 } };
}

/** Surplus taken out, spares put in, and the whole made less trouble, at no more cost. */
function finished(
  planned: readonly Planned[],
  cost: number,
  { problem, deadline }: OneMetalRequest,
  classes: readonly StockClass[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
): readonly Planned[] {
  const demand = problem.pieces.map((piece) => piece.quantity);
  const bare = withoutSurplus(planned, demand, boxes, rules);
  const wanted = problem.pieces.map((piece) => piece.spares ?? 0);
  const full = wanted.some((count) => count > 0)
    ? addSpares(bare, wanted, boxes, rules, () => deadline.left() <= 0).sheets
    : bare;
  if (deadline.left() <= 0) return full;
  const tidied = tidy(full, boxes, rules, problem.weights, deadline);
  return costOf(tidied, classes) <= Math.min(cost, costOf(full, classes)) ? tidied : full;
}

function costOf(planned: readonly Planned[], classes: readonly StockClass[]): number {
  return totalCost(classes, sheetsUsed(planned, classes.length), money) - keptCoins(planned);
}

/** False where all metal costs the same by area, so that the least money is the least metal too. */
function anyChoice(classes: readonly StockClass[]): boolean {
  const supplies = classes.flatMap((entry) => entry.supplies);
  const [first] = supplies;
  return supplies.some(
    (supply) =>
      supply.price === 0 || supply.price * metal.of(first) !== first.price * metal.of(supply),
  );
}
