import { checkProblem } from './check-problem.js';
import { type Deadline, deadlineIn } from './deadline.js';
import type { CuttingPlan, Layout, PlanEffort, PlanOutcome, Purchase } from './plan.js';
import type { CuttingProblem } from './problem.js';
import { type Engines, standardEngines } from './solvers/engine-choice.js';
import { type StockClass, stockClasses } from './stock-classes.js';
import { assignStock } from './two-stage/assign-stock.js';
import { dropSurplus, fillSheets } from './two-stage/filled-sheets.js';
import { firstFit } from './two-stage/first-fit.js';
import { type IntegerPlan, sheetsUsed } from './two-stage/integer-master.js';
import { leastMetal, leastMoney, totalCost } from './two-stage/objective.js';
import type { CutPattern } from './two-stage/patterns.js';
import { type SearchResult, search } from './two-stage/search.js';
import { type Faces, stripFamilies } from './two-stage/strip-families.js';
import { verifyPlan } from './verify/verify-plan.js';

export interface PlanOptions {
  /** Seconds after which the best plan so far is returned; 60 when absent. */
  readonly timeLimitSeconds?: number;
  /** The engines to use; the standard ones when absent. */
  readonly engines?: Engines;
  /** A clock in milliseconds; the machine's when absent. */
  readonly now?: () => number;
}

/** Share of the time left that the search for the least metal may take after that for the least money. */
const METAL_SHARE = 0.1;

/**
 * Plans how to cut the pieces from the stock by two-stage guillotine patterns
 * with a last trim: strips sheared across the stock in either direction, cut to
 * length, and trimmed to width where narrower than their strip.
 *
 * First the coins spent are made least; then, among plans that cost no more,
 * the metal used, offcuts before sheets. Every plan has passed `verifyPlan`.
 *
 * The bound is on the coins, for this kind of cutting and the shear's limits.
 * @throws ProblemError where the problem makes no sense as data
 */
export async function planCutting(
  problem: CuttingProblem,
  options: PlanOptions = {},
): Promise<PlanOutcome> {
  checkProblem(problem);
  const now = options.now ?? Date.now;
  const deadline = deadlineIn(options.timeLimitSeconds ?? 60, now);
  const engines = options.engines ?? standardEngines;
  const classes = stockClasses(problem);
  const faces = stripFamilies(problem, classes);
  const misfits = unfitting(problem, faces);
  if (misfits.length > 0) {
    const unlimited = {
      ...problem,
      shear: { ...problem.shear, longestCut: Number.MAX_SAFE_INTEGER },
    };
    const still = new Set(unfitting(unlimited, stripFamilies(unlimited, classes)));
    return {
      status: 'piece too large',
      pieces: misfits,
      largestStock: largestStock(problem),
      forTheShear: misfits.filter((id) => !still.has(id)),
    };
  }
  const shared = { problem, classes, faces, engines };
  const demand = problem.pieces.map((piece) => piece.quantity);
  const start = firstFit(faces, classes, demand, leastMoney);
  const money = await search({
    ...shared,
    objective: leastMoney,
    known: start.plan,
    start: start.cuts,
    deadline,
  });
  if (money.bound === Number.POSITIVE_INFINITY) return { status: 'not enough stock' };
  if (money.plan === undefined) return { status: 'none found' };
  const metal = await lessMetal(shared, money.plan, money.cuts, deadline, now);
  const layouts = drawn(metal.plan, problem, faces, classes);
  return { status: 'planned', plan: verified(problem, layouts, money, metal.result) };
}

interface Shared {
  readonly problem: CuttingProblem;
  readonly classes: readonly StockClass[];
  readonly faces: Faces;
  readonly engines: Engines;
}

/** Looks for a plan of the same cost that uses less metal, where the stock leaves a choice. */
async function lessMetal(
  shared: Shared,
  plan: IntegerPlan,
  cuts: readonly CutPattern[],
  deadline: Deadline,
  now: () => number,
): Promise<{ plan: IntegerPlan; result?: SearchResult }> {
  if (!anyChoice(shared.classes)) return { plan };
  const used = sheetsUsed(plan, shared.faces, shared.classes.length);
  const charge = totalCost(shared.classes, used, (supply) => supply.charge);
  const own = deadlineIn(Math.max(0, deadline.left() * METAL_SHARE), now);
  const result = await search({
    ...shared,
    objective: leastMetal(plan.cost),
    known: { ...plan, cost: charge },
    start: cuts,
    brief: true,
    deadline: own,
  });
  return { plan: result.plan ?? plan, result };
}

/** False where all metal costs the same by area, so that the least money is the least metal too. */
function anyChoice(classes: readonly StockClass[]): boolean {
  const supplies = classes.flatMap((entry) => entry.supplies);
  const [first] = supplies;
  return supplies.some(
    (supply) => supply.price === 0 || supply.price * first.charge !== first.price * supply.charge,
  );
}

function drawn(
  plan: IntegerPlan,
  problem: CuttingProblem,
  faces: Faces,
  classes: readonly StockClass[],
): readonly Layout[] {
  const demand = problem.pieces.map((piece) => piece.quantity);
  const sheets = dropSurplus(fillSheets(plan, faces), faces, demand);
  return assignStock(sheets, problem, faces, classes);
}

function verified(
  problem: CuttingProblem,
  layouts: readonly Layout[],
  money: SearchResult,
  metal: SearchResult | undefined,
): CuttingPlan {
  const buy = purchases(problem, layouts);
  const cost = buy.reduce((sum, purchase) => sum + purchase.cost, 0);
  const effort: PlanEffort = {
    rounds: money.rounds + (metal?.rounds ?? 0),
    patterns: money.patterns + (metal?.patterns ?? 0),
    integerMasters: money.integerMasters + (metal?.integerMasters ?? 0),
    nodes: 0,
    ending: money.ending,
  };
  const plan: CuttingPlan = {
    layouts,
    buy,
    cost,
    parts: { bought: cost, fromShop: 0, kept: 0 },
    spares: [],
    bound: { cost: money.bound, proven: money.bound === cost },
    effort,
  };
  const faults = verifyPlan(problem, plan);
  if (faults.length > 0) {
    throw new Error(`the planner made a plan that does not hold: ${faults[0].message}`);
  }
  return plan;
}

function purchases(problem: CuttingProblem, layouts: readonly Layout[]): readonly Purchase[] {
  return problem.stock.flatMap((stock): Purchase[] => {
    if (stock.kind === 'offcut') return [];
    const used = layouts
      .filter((layout) => layout.stock === stock.id)
      .reduce((sum, layout) => sum + layout.count, 0);
    const count = used - stock.onHand;
    return count > 0 ? [{ stock: stock.id, count, cost: count * stock.price }] : [];
  });
}

/** The pieces that no face can hold, by id. */
function unfitting(problem: CuttingProblem, faces: Faces): readonly string[] {
  const fitting = new Set(
    faces.faces.flatMap((face) =>
      faces.families[face.family].lays
        .filter((lay) => lay.across <= face.breadth)
        .map((lay) => lay.piece),
    ),
  );
  return problem.pieces.filter((_, i) => !fitting.has(i)).map((piece) => piece.id);
}

/** The largest stock that there is any of, or else the largest that is listed. */
function largestStock(problem: CuttingProblem): string {
  const there = problem.stock.filter(
    (stock) => stock.kind === 'offcut' || stock.onHand > 0 || stock.canBuy !== 0,
  );
  const [largest] = [...(there.length > 0 ? there : problem.stock)].sort(
    (a, b) => b.length * b.width - a.length * a.width,
  );
  return largest.id;
}
