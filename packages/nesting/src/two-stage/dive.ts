import type { CuttingProblem } from '../problem.js';
import type { StockClass } from '../stock-classes.js';
import { type LinearRequest, type LinearResult, solveLinear } from './column-generation.js';
import { type IntegerPlan, solveIntegerMaster } from './integer-master.js';
import { pieceCounts } from './linear-master.js';
import { totalCost, withinBudget } from './objective.js';
import { type CutPattern, onTwoLevels, PatternPool } from './patterns.js';
import { likelyPatterns } from './patterns-within-gap.js';
import { Pricing } from './pricing.js';

export interface DiveRequest {
  readonly problem: CuttingProblem;
  /** The whole problem's linear master, and its solution. */
  readonly linear: LinearRequest;
  readonly root: LinearResult;
  /** Only a plan that costs at most this is of use. */
  readonly atMost: number;
  /** Adds noise to the choice of patterns; the first dive does without. */
  readonly random: (() => number) | undefined;
}

export interface DiveResult {
  readonly plan: IntegerPlan | undefined;
  /** The patterns of the request and all that were generated on the way. */
  readonly cuts: readonly CutPattern[];
}

/** Rounds of column generation after each rounding. */
const ROUNDS_EACH = 12;
/** Once the linear plan needs no more sheets than this, the rest is left to the integer master. */
const SHEETS_LEFT = 6;
/** Seconds that the integer master of the rest may take. */
const SECONDS_FOR_THE_REST = 1.5;
/** How far noise may change the weight of a pattern, as a share. */
const NOISE = 0.4;
/** Patterns that are listed for it, beside those that came up. */
const PATTERNS_FOR_THE_REST = 1500;
const WHOLE = 1e-6;

/**
 * Dives for an integer plan: rounds the linear plan down, or its largest pattern
 * up where all are below one, takes those sheets as cut, and solves the linear
 * master for what is left, with fresh patterns that fit it; until the rest is
 * small enough for the integer master.
 */
export async function dive(request: DiveRequest): Promise<DiveResult> {
  const { linear, problem } = request;
  const { faces, objective } = linear;
  const used: number[] = new Array(linear.classes.length).fill(0);
  const taken: [CutPattern, number][] = [];
  let { demand, classes } = linear;
  let result = request.root;
  let cuts = result.patterns;
  let triedTheRest = false;
  const costSoFar = () => totalCost(linear.classes, used, objective.cost);

  while (demand.some((count) => count > 0)) {
    const chosen = choose(result, request.random);
    if (chosen.length === 0) return { plan: undefined, cuts };
    for (const [cut, most] of chosen) {
      const { stockClass } = faces.faces[cut.face];
      const counts = pieceCounts(faces, cut);
      const count = Math.min(most, usefulCopies(counts, demand), available(classes[stockClass]));
      if (count === 0) continue;
      taken.push([cut, count]);
      used[stockClass] += count;
      demand = demand.map((wanted, i) => Math.max(0, wanted - count * (counts.get(i) ?? 0)));
      classes = classes.map((entry, g) => (g === stockClass ? without(entry, count) : entry));
    }
    if (demand.every((count) => count === 0)) break;
    const left = request.atMost - costSoFar();
    const affordable = left >= 0 && withinBudget(objective, linear.classes, used);
    if (!affordable || linear.deadline.left() <= 0) return { plan: undefined, cuts };
    const problemLeft = withDemand(problem, demand);
    const rest: LinearRequest = {
      ...linear,
      demand,
      classes,
      objective: { ...objective, ...restOfBudget(linear, used) },
      pricing: new Pricing(problemLeft, faces),
      start: cuts,
      mostRounds: ROUNDS_EACH,
      enough: (scaled) => scaled > left * linear.scale,
    };
    result = await solveLinear(rest);
    cuts = result.patterns;
    if (rest.enough(result.bound.scaled)) return { plan: undefined, cuts };
    const sheetsLeft = result.amounts.reduce((sum, amount) => sum + amount, 0);
    if (triedTheRest || sheetsLeft > SHEETS_LEFT) continue;
    triedTheRest = true;
    const pool = new PatternPool();
    for (const cut of cuts) pool.addCut(cut);
    const gap = left * linear.scale - result.bound.scaled;
    pool.addAll(
      likelyPatterns(problemLeft, faces, rest.pricing, result.bound, gap, PATTERNS_FOR_THE_REST),
    );
    const tail = await solveIntegerMaster({
      ...rest,
      strips: pool.strips,
      sheets: pool.sheets,
      atMost: left,
      seconds: Math.min(SECONDS_FOR_THE_REST, linear.deadline.left()),
    });
    if (tail.status === 'best' || tail.status === 'found') {
      const fixed = onTwoLevels(taken);
      return {
        plan: {
          cost: costSoFar() + tail.plan.cost,
          sheets: [...fixed.sheets, ...tail.plan.sheets],
          strips: [...fixed.strips, ...tail.plan.strips],
        },
        cuts,
      };
    }
  }
  const cost = costSoFar();
  const good = cost <= request.atMost && withinBudget(objective, linear.classes, used);
  return { plan: good ? { cost, ...onTwoLevels(taken) } : undefined, cuts };
}

/** What to take from a linear plan: its whole part, or else one sheet of what it has most of. */
function choose(
  { patterns, amounts }: LinearResult,
  random: (() => number) | undefined,
): readonly (readonly [CutPattern, number])[] {
  const whole = patterns
    .map((cut, i) => [cut, Math.floor(amounts[i] + WHOLE)] as const)
    .filter(([, count]) => count >= 1);
  if (whole.length > 0) return whole;
  let best: { cut: CutPattern; weight: number } | undefined;
  patterns.forEach((cut, i) => {
    if (!(amounts[i] > WHOLE)) return;
    const weight = amounts[i] * (random === undefined ? 1 : 1 + NOISE * (random() - 0.5));
    if (best === undefined || weight > best.weight) best = { cut, weight };
  });
  return best === undefined ? [] : [[best.cut, 1]];
}

/** Copies of a pattern until one of them would give no piece that is still wanted. */
function usefulCopies(counts: ReadonlyMap<number, number>, demand: readonly number[]): number {
  return Math.max(0, ...[...counts].map(([piece, count]) => Math.ceil(demand[piece] / count)));
}

function available(entry: StockClass): number {
  return entry.supplies.reduce((sum, supply) => sum + supply.count, 0);
}

/** The class after `count` of its sheets have been taken, cheapest first. */
function without(entry: StockClass, count: number): StockClass {
  let left = count;
  const supplies = entry.supplies.map((supply) => {
    const taken = Math.min(left, supply.count);
    left -= taken;
    return { ...supply, count: supply.count - taken };
  });
  return { ...entry, supplies: supplies.filter((supply) => supply.count > 0) };
}

function restOfBudget(linear: LinearRequest, used: readonly number[]): { budget?: number } {
  const { budget } = linear.objective;
  if (budget === undefined) return {};
  return { budget: budget - totalCost(linear.classes, used, (supply) => supply.price) };
}

function withDemand(problem: CuttingProblem, demand: readonly number[]): CuttingProblem {
  return {
    ...problem,
    pieces: problem.pieces.map((piece, i) => ({ ...piece, quantity: demand[i] })),
  };
}
