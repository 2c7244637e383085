import type { Deadline } from '../deadline.js';
import type { CuttingProblem } from '../problem.js';
import { seededRandom } from '../random.js';
import type { Engines } from '../solvers/engine-choice.js';
import type { StockClass } from '../stock-classes.js';
import { branchOnSupplies } from './branch-on-supplies.js';
import { type LinearRequest, type LinearResult, solveLinear } from './column-generation.js';
import { dive } from './dive.js';
import { exactScale } from './exact-bound.js';
import {
  type IntegerPlan,
  type IntegerResult,
  sheetsUsed,
  solveIntegerMaster,
} from './integer-master.js';
import { type Objective, totalCost, withinBudget } from './objective.js';
import { type CutPattern, PatternPool } from './patterns.js';
import {
  likelyPatterns,
  type PatternsWithinGap,
  patternsWithinGap,
} from './patterns-within-gap.js';
import { Pricing } from './pricing.js';
import { ReachableCosts } from './reachable-cost.js';
import { aboveEveryPlan, shortagePenalties } from './shortage.js';
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
  /** True for a short search that does without noisy dives and the largest masters. */
  readonly brief?: boolean;
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
/** Most patterns in a master that is only to find a better plan, beside those that came up. */
const MOST_LIKELY = 3_000;
/** Share of the time left that a master may take which proves nothing. */
const SHARE_TO_FIND = 0.25;
/** Most noisy dives, after the first without noise. */
const NOISY_DIVES = 40;
/** After so many dives the integer master has another go at all patterns. */
const DIVES_TO_A_MASTER = 5;

/**
 * Finds a plan of least cost and the bound that says how good it is. Cheap means
 * come first and it ends as soon as plan and bound meet: column generation for
 * the bound; a dive and the integer master for the plan; branching on supplies to
 * raise the bound; the integer master over every pattern that a better plan could
 * contain, which proves the plan or betters it; then noisy dives while time lasts.
 */
export async function search(request: SearchRequest): Promise<SearchResult> {
  const hunt = new Hunt(request);
  const root = await hunt.solveRoot();
  const ending = await hunt.settle(root);
  return hunt.result(ending);
}

/** The state of one search. */
class Hunt {
  readonly #request: SearchRequest;
  readonly #linear: LinearRequest;
  readonly #reach: ReachableCosts;
  /** Costs more than any plan. */
  readonly #above: number;
  readonly #pool = new PatternPool();
  #plan: IntegerPlan | undefined;
  /** The bound in units of 1/scale. */
  #scaled = Number.NEGATIVE_INFINITY;
  /** Raised where a search of all patterns has proven the plan. */
  #proven = false;
  #cuts: readonly CutPattern[];
  #rounds = 0;
  #integerMasters = 0;

  constructor(request: SearchRequest) {
    const { problem, classes, faces, objective } = request;
    const demand = problem.pieces.map((piece) => piece.quantity);
    const penalties = shortagePenalties(faces, classes, demand, objective);
    this.#request = request;
    this.#plan = request.known;
    this.#above = aboveEveryPlan(classes, demand, objective);
    const prices = classes.flatMap((entry) => entry.supplies.map(objective.cost));
    this.#reach = new ReachableCosts(prices, this.#above);
    const shortest = demand.reduce((sum, quantity, i) => sum + quantity * penalties[i], 0);
    this.#linear = {
      faces,
      pricing: new Pricing(problem, faces),
      classes,
      demand,
      objective,
      penalties,
      scale: exactScale(shortest + this.#above),
      start: request.start,
      enough: (scaled) => this.#meets(scaled),
      deadline: request.deadline,
      engines: request.engines,
    };
    this.#cuts = request.start;
    for (const [strip] of this.#plan?.strips ?? []) this.#pool.addStrip(strip);
    for (const [sheet] of this.#plan?.sheets ?? []) this.#pool.addSheet(sheet);
  }

  async solveRoot(): Promise<LinearResult> {
    const root = await solveLinear(this.#linear);
    this.#scaled = root.bound.scaled;
    this.#rounds += root.rounds;
    this.#learn(root.patterns);
    return root;
  }

  async settle(root: LinearResult): Promise<SearchEnding> {
    if (this.#impossible() || this.#met()) return 'bound met';
    if (!root.finished) return 'time limit';
    await this.#dive(root, undefined);
    if (!this.#met()) await this.#master(this.#pool, this.#left() * SHARE_TO_FIND);
    if (!this.#met()) await this.#branch(root);
    if (this.#impossible() || this.#met()) return 'bound met';
    if (this.#request.brief === true) return 'pattern limit';
    const listed = await this.#masterOfAll(root);
    if (listed !== undefined) return listed;
    await this.#masterOfLikely(root);
    if (this.#met()) return 'bound met';
    const random = seededRandom(1);
    for (let dives = 1; dives <= NOISY_DIVES; dives++) {
      if (this.#left() <= 0) return 'time limit';
      await this.#dive(root, random);
      if (!this.#met() && dives % DIVES_TO_A_MASTER === 0) {
        await this.#master(this.#pool, this.#left() * SHARE_TO_FIND);
      }
      if (this.#met()) return 'bound met';
    }
    return 'pattern limit';
  }

  result(ending: SearchEnding): SearchResult {
    const bound = this.#proven ? (this.#plan?.cost ?? this.#above) : this.#bound(this.#scaled);
    return {
      plan: this.#plan,
      bound: bound >= this.#above ? Number.POSITIVE_INFINITY : bound,
      ending,
      cuts: this.#cuts,
      rounds: this.#rounds,
      patterns: this.#pool.size,
      integerMasters: this.#integerMasters,
    };
  }

  async #dive(root: LinearResult, random: (() => number) | undefined): Promise<void> {
    const { problem } = this.#request;
    const linear = { ...this.#linear, start: this.#cuts };
    const result = await dive({ problem, linear, root, atMost: this.#target(), random });
    this.#offer(result.plan);
    this.#learn(result.cuts);
  }

  async #branch(root: LinearResult): Promise<void> {
    const linear = { ...this.#linear, start: this.#cuts };
    const result = await branchOnSupplies(linear, { ...root, patterns: this.#cuts });
    this.#scaled = Math.max(
      this.#scaled,
      Math.min(result.scaled, this.#above * this.#linear.scale),
    );
    this.#rounds += result.rounds;
    this.#learn(result.cuts);
  }

  /**
   * The integer master over all patterns that a better plan could contain.
   * @returns undefined where there are too many of them
   */
  async #masterOfAll(root: LinearResult): Promise<SearchEnding | undefined> {
    const { problem, faces } = this.#request;
    const gap = this.#target() * this.#linear.scale - root.bound.scaled;
    const { pricing } = this.#linear;
    const all = patternsWithinGap(problem, faces, pricing, root.bound, gap, MOST_TO_PROVE);
    if (all === undefined) return undefined;
    const status = await this.#master(all, this.#left());
    if (status === 'none' || status === 'best') {
      this.#proven = true;
      return 'all patterns within the gap searched';
    }
    return this.#met() ? 'bound met' : undefined;
  }

  /** The integer master over the patterns that a better plan is most likely to contain. */
  async #masterOfLikely(root: LinearResult): Promise<void> {
    const { problem, faces } = this.#request;
    const gap = this.#target() * this.#linear.scale - root.bound.scaled;
    const { pricing } = this.#linear;
    const likely = new PatternPool();
    likely.addAll(likelyPatterns(problem, faces, pricing, root.bound, gap, MOST_LIKELY));
    likely.addAll(this.#pool);
    await this.#master(likely, this.#left() * SHARE_TO_FIND);
  }

  async #master(patterns: PatternsWithinGap, seconds: number): Promise<IntegerResult['status']> {
    if (seconds <= 0) return 'stopped';
    this.#integerMasters++;
    const { strips, sheets } = patterns;
    const atMost = this.#target();
    const result = await solveIntegerMaster({ ...this.#linear, strips, sheets, atMost, seconds });
    if (result.status === 'best' || result.status === 'found') this.#offer(result.plan);
    return result.status;
  }

  /** Takes a plan that is better than the best so far, once its cost has been counted again. */
  #offer(plan: IntegerPlan | undefined): void {
    if (plan === undefined) return;
    const { classes, faces, objective } = this.#request;
    const used = sheetsUsed(plan, faces, classes.length);
    const cost = totalCost(classes, used, objective.cost);
    if (cost >= (this.#plan?.cost ?? Number.POSITIVE_INFINITY)) return;
    if (withinBudget(objective, classes, used)) this.#plan = { ...plan, cost };
  }

  #learn(cuts: readonly CutPattern[]): void {
    this.#cuts = cuts;
    for (const cut of cuts) this.#pool.addCut(cut);
  }

  #left(): number {
    return this.#request.deadline.left();
  }

  /** The most that a plan may cost to be better than the best so far. */
  #target(): number {
    return this.#plan === undefined ? this.#above : this.#reach.below(this.#plan.cost);
  }

  #bound(scaled: number): number {
    return this.#reach.atLeast(Math.ceil(scaled / this.#linear.scale));
  }

  #meets(scaled: number): boolean {
    return this.#plan !== undefined && this.#bound(scaled) >= this.#plan.cost;
  }

  #met(): boolean {
    return this.#proven || this.#meets(this.#scaled);
  }

  #impossible(): boolean {
    return this.#bound(this.#scaled) >= this.#above;
  }
}
