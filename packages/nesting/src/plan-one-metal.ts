import { assignStock } from './assign-stock.js';
import type { Deadline } from './deadline.js';
import { everyPattern } from './enumeration/every-pattern.js';
import { kindPricers } from './kind-pricers.js';
import { dropSurplus } from './layout/drop-surplus.js';
import { BandBook } from './master/band-book.js';
import { exactScale } from './master/exact-bound.js';
import {
  leastMetal,
  leastMoney,
  metal,
  money,
  type Objective,
  totalCost,
} from './master/objective.js';
import { aboveEveryPlan, shortagePenalties } from './master/shortage.js';
import { type StockClass, stockClasses } from './master/stock-class.js';
import { misfits } from './misfits.js';
import {
  type CuttingRules,
  cuttingRules,
  type FillBox,
  keepRuleFor,
} from './pattern/cutting-rules.js';
import { keptValue } from './pattern/kept-value.js';
import type { Pattern } from './pattern/part.js';
import { patternOf } from './pattern/pattern-of.js';
import type { Layout, PlanEffort, PlanOutcome, SearchEnding } from './plan.js';
import type { CuttingProblem, Metal } from './problem.js';
import { firstFit } from './search/first-fit.js';
import type { SearchGround } from './search/ground.js';
import { keptCoins, type Planned, sheetsUsed } from './search/planned.js';
import { type SearchStep, search } from './search/search.js';
import type { Engines } from './solvers/engine-choice.js';
import { addSpares } from './spares/add-spares.js';
import { tidy } from './tidy/tidy.js';

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

/** Plans the pieces of one metal. */
export async function planOneMetal(
  request: OneMetalRequest,
): Promise<OneMetalPlan | Exclude<PlanOutcome, { status: 'planned' }>> {
  const { problem, deadline, engines } = request;
  const rules = cuttingRules(problem);
  const rule = keepRuleFor(request.metal, problem.keep);
  const value = (length: number, width: number) => keptValue(length, width, rule);
  const keep = rule !== undefined && rule.coinsPerMillion > 0 ? value : undefined;
  const classes = stockClasses(problem, rules.limits, value);
  const boxes = classes.map(({ box }) => ({ ...box, keep: rule }));
  const unfit = misfits(problem, classes, rules);
  if (unfit !== undefined) return unfit;
  const demand = problem.pieces.map((piece) => piece.quantity);
  const pricers = kindPricers(rules.stages, {
    boxes: classes.map(({ box }) => box),
    demand,
    limits: rules.limits,
    rule: keep === undefined ? undefined : rule,
    keep,
  });
  const effort = { rounds: 0, integerMasters: 0, nodes: 0 };
  const newBook = () =>
    new BandBook(
      classes.map(({ box }) => box),
      rules.limits,
      keep === undefined
        ? undefined
        : (part, length, width) => patternOf(part, 0, { length, width, keep: rule }, rules).kept,
    );
  const book = newBook();
  const keptAtMost = classes.map(({ box }) => {
    const { kerf } = rules.limits;
    return keep === undefined ? 0 : keep(box.length - kerf, box.width - kerf);
  });
  const ground = (objective: Objective, until: Deadline): SearchGround => {
    const penalties = shortagePenalties(classes, demand, objective);
    const most =
      demand.reduce((sum, quantity, i) => sum + quantity * penalties[i], 0) +
      aboveEveryPlan(classes, demand, objective);
    return {
      classes,
      demand,
      objective,
      penalties,
      keptAtMost,
      scale: exactScale(most),
      limits: rules.limits,
      book,
      newBook,
      pricer: pricers.exact,
      pricerFor: pricers.quick,
      firstFit: (wanted, stock) => firstFit(stock, boxes, wanted, rules, pricers.quick),
      // Strips of two stages hold no more of a piece than is wanted, each by itself.
      proper: (pattern, wanted) =>
        rules.stages === 2 && keep === undefined ? pattern : proper(pattern, wanted, boxes, rules),
      bare: keep === undefined ? undefined : (all) => withoutSurplus(all, demand, boxes, rules),
      everyPattern: (over) => everyPattern(boxes, demand, rules, over),
      engines,
      deadline: until,
      effort,
    };
  };
  const { seed, onProgress, onPlan } = request;
  const planOf = (
    sheets: readonly Planned[],
    bound: number,
    ending: SearchEnding,
  ): OneMetalPlan => ({
    status: 'planned',
    layouts: assignStock(sheets, problem, classes),
    bound,
    effort: { ...effort, patterns: book.bands.length + book.sheets.length },
    ending,
  });
  const start = firstFit(classes, boxes, demand, rules, pricers.quick);
  const found = await search({
    ground: ground(leastMoney, deadline),
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
  if (keep === undefined && anyChoice(classes) && deadline.left() > 0) {
    const own = shareOf(deadline, METAL_SHARE);
    const less = await search({
      ground: ground(leastMetal(found.cost), own),
      known: planned,
      brief: true,
      seed,
    });
    planned = less.planned ?? planned;
  }
  const sheets = finished(planned, found.cost, request, classes, boxes, rules);
  return planOf(sheets, found.bound, found.ending);
}

/** A pattern without the pieces beyond the demand, others that are wanted in their place. */
function proper(
  pattern: Pattern,
  demand: readonly number[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
): Pattern {
  if (pattern.counts.every(([piece, copies]) => copies <= demand[piece])) return pattern;
  const wanted = demand.map(() => 0);
  for (const [piece, copies] of pattern.counts) wanted[piece] = Math.min(copies, demand[piece]);
  const bare = dropSurplus([{ pattern, count: 1 }], wanted, boxes, rules);
  const others = demand.map((quantity, piece) => quantity - wanted[piece]);
  const [full] = addSpares(bare, others, boxes, rules).sheets;
  return full?.pattern ?? pattern;
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
    ? addSpares(bare, wanted, boxes, rules).sheets
    : bare;
  if (deadline.left() <= 0) return full;
  const tidied = tidy(full, boxes, rules, problem.weights, deadline);
  return costOf(tidied, classes) <= Math.min(cost, costOf(full, classes)) ? tidied : full;
}

/** The plan as its patterns cut exactly what is wanted. */
function withoutSurplus(
  planned: readonly Planned[],
  demand: readonly number[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
): readonly Planned[] {
  const exact = planned.map(({ pattern, count }) => ({
    pattern: patternOf(pattern.part, pattern.stockClass, boxes[pattern.stockClass], rules),
    count,
  }));
  return dropSurplus(exact, demand, boxes, rules);
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

function shareOf(deadline: Deadline, share: number): Deadline {
  const end = deadline.left() * (1 - share);
  return { left: () => deadline.left() - end };
}
