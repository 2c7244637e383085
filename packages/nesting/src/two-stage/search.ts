import type { Deadline } from '../deadline.js';
import type { CuttingProblem } from '../problem.js';
import type { Engines } from '../solvers/engine-choice.js';
import type { StockClass } from '../stock-classes.js';
import { solveRoot } from './column-generation.js';
import { type ExactBound, exactScale } from './exact-bound.js';
import { type IntegerPlan, type IntegerResult, solveIntegerMaster } from './integer-master.js';
import type { Objective } from './objective.js';
import { type CutPattern, PatternPool, type SheetPattern, type StripPattern } from './patterns.js';
import { patternsWithinGap } from './patterns-within-gap.js';
import { Pricing } from './pricing.js';
import { ReachableCosts } from './reachable-cost.js';
import type { Faces } from './strip-families.js';

export interface SearchRequest {
  readonly problem: CuttingProblem;
  readonly classes: readonly StockClass[];
  readonly faces: Faces;
  readonly objective: Objective;
  /** A plan known already, with its cost by this objective. */
  readonly known?: IntegerPlan | undefined;
  /** Patterns known already, to start from. */
  readonly start: readonly CutPattern[];
  readonly deadline: Deadline;
  readonly engines: Engines;
}

export type SearchEnding =
  | 'bound met'
  | 'all patterns within the gap searched'
  | 'time limit'
  | 'pattern limit';

export interface SearchResult {
  /** The best plan found, if any. */
  readonly plan: IntegerPlan | undefined;
  /** No plan costs less; `Infinity` where it is proven that there is no plan at all. */
  readonly bound: number;
  readonly ending: SearchEnding;
  /** Every pattern of whole sheets that came up. */
  readonly cuts: readonly CutPattern[];
  readonly rounds: number;
  readonly patterns: number;
  readonly integerMasters: number;
}

/** Most patterns in a master that is to prove something. */
const MOST_TO_PROVE = 20_000;
/** Most patterns in a master that is only to find a better plan. */
const MOST_TO_FIND = 3_000;
/** Share of the time left that a master may take which proves nothing. */
const SHARE_TO_FIND = 0.3;
/** A shortage costs this many times more than all stock that could be used. */
const SHORTAGE_FACTOR = 64;

/**
 * Finds a plan of least cost: a start by first fit, the linear master by
 * column generation, the integer master over the patterns that came up, and
 * then over every pattern that a better plan could contain.
 */
export async function search(request: SearchRequest): Promise<SearchResult> {
  const { problem, classes, faces, objective, deadline, engines } = request;
  const demand = problem.pieces.map((piece) => piece.quantity);
  const pricing = new Pricing(problem, faces);
  const penalties = shortagePenalties(request, demand);
  const dearest = 1 + sum(demand) * dearestSupply(classes, objective);
  const scale = exactScale(sum(demand.map((quantity, i) => quantity * penalties[i])) + dearest);
  const reach = new ReachableCosts(
    classes.flatMap((entry) => entry.supplies.map(objective.cost)),
    dearest,
  );

  let plan = request.known;
  const lowerBound = (scaled: number) => reach.atLeast(Math.ceil(scaled / scale));
  const target = () => (plan === undefined ? dearest : reach.below(plan.cost));
  const met = (scaled: number) => plan !== undefined && lowerBound(scaled) >= plan.cost;

  const root = await solveRoot({
    faces,
    pricing,
    classes,
    demand,
    objective,
    penalties,
    scale,
    start: request.start,
    enough: (scaled) => met(scaled),
    deadline,
    engines,
  });
  const pool = new PatternPool();
  for (const cut of root.patterns) pool.addCut(cut);
  for (const [strip] of plan?.strips ?? []) pool.addStrip(strip);
  for (const [sheet] of plan?.sheets ?? []) pool.addSheet(sheet);
  let integerMasters = 0;
  const done = (ending: SearchEnding, bound = lowerBound(root.bound.scaled)): SearchResult => ({
    plan,
    bound: bound >= dearest ? Number.POSITIVE_INFINITY : bound,
    ending,
    cuts: root.patterns,
    rounds: root.rounds,
    patterns: pool.size,
    integerMasters,
  });
  const solve = async (
    patterns: {
      readonly strips: readonly StripPattern[];
      readonly sheets: readonly SheetPattern[];
    },
    seconds: number,
  ): Promise<IntegerResult['status']> => {
    integerMasters++;
    const result = await solveIntegerMaster({
      strips: patterns.strips,
      sheets: patterns.sheets,
      faces,
      classes,
      demand,
      objective,
      atMost: target(),
      seconds,
      engines,
    });
    if (result.status === 'best' || result.status === 'found') plan = better(plan, result.plan);
    return result.status;
  };
  const listed = (bound: ExactBound, gap: number, most: number) =>
    patternsWithinGap(problem, faces, pricing, bound, gap, most);

  if (lowerBound(root.bound.scaled) >= dearest || met(root.bound.scaled)) return done('bound met');
  if (deadline.left() <= 0) return done('time limit');
  await solve(pool, deadline.left() * SHARE_TO_FIND);
  for (;;) {
    if (met(root.bound.scaled)) return done('bound met');
    if (deadline.left() <= 0) return done('time limit');
    const gap = target() * scale - root.bound.scaled;
    const all = listed(root.bound, gap, MOST_TO_PROVE);
    if (all !== undefined) {
      const before = plan?.cost;
      const status = await solve(all, deadline.left());
      if (status === 'none') return done('all patterns within the gap searched', before ?? dearest);
      if (status === 'best') return done('all patterns within the gap searched', plan?.cost);
      return done(met(root.bound.scaled) ? 'bound met' : 'time limit');
    }
    const some = fewer(gap, (part) => listed(root.bound, part, MOST_TO_FIND));
    if (some === undefined) return done('pattern limit');
    for (const strip of pool.strips) some.addStrip(strip);
    for (const sheet of pool.sheets) some.addSheet(sheet);
    const status = await solve(some, deadline.left() * SHARE_TO_FIND);
    // Only a better plan narrows the gap enough to make another listing worth its time.
    if (status !== 'best' && status !== 'found') return done('pattern limit');
  }
}

/** The patterns within the largest part of the gap, by halving, that are few enough to list. */
function fewer(
  gap: number,
  list: (
    part: number,
  ) => { strips: readonly StripPattern[]; sheets: readonly SheetPattern[] } | undefined,
): PatternPool | undefined {
  for (let part = gap / 2; part >= 1; part /= 2) {
    const listed = list(Math.floor(part));
    if (listed === undefined) continue;
    const pool = new PatternPool();
    for (const strip of listed.strips) pool.addStrip(strip);
    for (const sheet of listed.sheets) pool.addSheet(sheet);
    return pool;
  }
  return undefined;
}

function better(a: IntegerPlan | undefined, b: IntegerPlan): IntegerPlan {
  return a === undefined || b.cost < a.cost ? b : a;
}

/**
 * What going without a piece costs in the linear master. Where a supply without
 * limit can hold it, one sheet for the piece alone; a plan may do just that.
 */
function shortagePenalties(request: SearchRequest, demand: readonly number[]): readonly number[] {
  const { classes, faces, objective, known } = request;
  const all = 1 + sum(demand) * dearestSupply(classes, objective);
  return demand.map((_, piece) => {
    if (objective.budget !== undefined) return SHORTAGE_FACTOR * (known?.cost ?? all);
    const costs = faces.faces
      .filter((face) =>
        faces.families[face.family].lays.some(
          (lay) => lay.piece === piece && lay.across <= face.breadth,
        ),
      )
      .flatMap((face) => classes[face.stockClass].supplies)
      .filter((supply) => supply.count === Number.POSITIVE_INFINITY)
      .map(objective.cost);
    return costs.length > 0 ? Math.min(...costs) : SHORTAGE_FACTOR * all;
  });
}

function dearestSupply(classes: readonly StockClass[], objective: Objective): number {
  return Math.max(...classes.flatMap((entry) => entry.supplies.map(objective.cost)));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
