import type { Deadline } from '../deadline.js';
import { BandMaster } from '../master/band-master.js';
import { type LinearResult, solveLinear } from '../master/column-generation.js';
import { type Measure, money, totalCost } from '../master/objective.js';
import { ReachableCosts } from '../master/reachable-cost.js';
import { aboveEveryPlan } from '../master/shortage.js';
import type { SearchEnding } from '../plan.js';
import { seededRandom } from '../random.js';
import { branchOnSupplies } from './branch-on-supplies.js';
import { withFirstFit, withinCost } from './complete-plan.js';
import { dive } from './dive.js';
import type { SearchGround } from './ground.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './planned.js';
import {
  cutAgain,
  missingWeight,
  type Partial,
  Refiller,
  refillRest,
  SheetChoice,
} from './refill.js';
import { solveWhole, type WholeAnswer } from './whole-master.js';

export interface SearchRequest {
  readonly ground: SearchGround;
  /** A plan known already. */
  readonly known: readonly Planned[] | undefined;
  /** True for a short search that does without the largest masters and repeated dives. */
  readonly brief: boolean;
  readonly seed: number;
  /** Told of whatever changes. */
  readonly onProgress?: (step: SearchStep) => void;
  /** Told of every plan that is better than those before, and of the bound so far. */
  readonly onBetter?: (planned: readonly Planned[], bound: number) => void;
}

/** How far a search has come. */
export interface SearchStep {
  readonly phase: string;
  /** Of the best plan so far; `Infinity` without one. */
  readonly cost: number;
  readonly bound: number;
  /** Patterns so far. */
  readonly columns: number;
}

export interface SearchResult {
  /** The best plan found, if any. */
  readonly planned: readonly Planned[] | undefined;
  /** Its cost by the objective, coins kept in sheets taken off; `Infinity` without one. */
  readonly cost: number;
  /** No plan costs less; `Infinity` where it is proven that there is no plan at all. */
  readonly bound: number;
  readonly ending: SearchEnding;
}

/** Most patterns in a master that is to prove something. */
const MOST_TO_PROVE = 20_000;
/** Most columns in a master over all that came up. */
const MOST_IN_POOL = 600;
/** Most patterns in a master that is only to find a better plan. */
const MOST_LIKELY = 1_500;
/** Nodes that a master may take which proves nothing. */
const NODES_TO_FIND = 400;
/** Sheets that a dive leaves to the integer master, in turn. */
const SHEETS_LEFT = [6, 4, 9];
/** Steps of local search in vain after which it starts again from another dive. */
const STEPS_IN_VAIN = 40;
/** Where so many costs lie between the bound and a plan, the plan is bettered step by step. */
const FEW_COSTS = 3;
/** Share of the time that the linear plan over the quick pricer's patterns may take. */
const SHARE_OF_QUICK = 0.2;
/** Share of the time that the linear plan over all patterns of the kind may take. */
const SHARE_OF_ROOT = 0.5;
/** Share of the time left that branching may take, and a master that proves nothing. */
const SHARE_TO_BRANCH = 0.25;
const SHARE_TO_FIND = 0.15;
/** Dives, after the first without noise, each with its local search. */
const DIVES = 60;
/** Dives in vain after which the search ends. */
const DIVES_IN_VAIN = 10;

/**
 * Finds a plan of least cost and the bound that says how good it is. Cheap means
 * come first and it ends as soon as plan and bound meet: column generation for
 * the bound; a dive, local search and the integer master for the plan; branching
 * on supplies to raise the bound; the integer master over every pattern that a
 * better plan could contain, which proves the plan or betters it; then dives with
 * noise while time lasts.
 */
export async function search(request: SearchRequest): Promise<SearchResult> {
  const hunt = new Hunt(request);
  try {
    return hunt.result(await hunt.run());
  } finally {
    hunt.close();
  }
}

/** The state of one search. */
class Hunt {
  readonly #ground: SearchGround;
  readonly #request: SearchRequest;
  readonly #master: BandMaster;
  readonly #measure: Measure;
  readonly #reach: ReachableCosts;
  /** Costs more than any plan. */
  readonly #above: number;
  #planned: readonly Planned[] | undefined;
  #cost = Number.POSITIVE_INFINITY;
  /** The bound in units of 1/scale. */
  #scaled = Number.NEGATIVE_INFINITY;
  /** Raised where a search of all patterns has proven the plan. */
  #proven = false;

  constructor(request: SearchRequest) {
    const { ground } = request;
    const { classes, demand, objective } = ground;
    this.#request = request;
    this.#ground = ground;
    this.#measure = objective.cost ?? money;
    this.#above = aboveEveryPlan(classes, demand, objective);
    const valued =
      this.#measure.coin > 0 &&
      (ground.keptAtMost.some((coins) => coins > 0) ||
        classes.some((entry) => entry.supplies.some(({ leftOver }) => leftOver > 0)));
    const prices = classes.flatMap((entry) =>
      entry.supplies.map((supply) => this.#measure.of(supply) * supply.unit),
    );
    // Where remnants have a value, any whole number of coins can be the cost.
    this.#reach = new ReachableCosts(valued ? [1] : prices, this.#above);
    this.#offer(request.known);
    for (const { pattern } of request.known ?? []) ground.book.addPattern(pattern);
    this.#master = new BandMaster(ground);
  }

  close(): void {
    this.#master.close();
  }

  async run(): Promise<SearchEnding> {
    const root = await this.#solveRoot();
    if (this.#impossible() || this.#met()) return 'bound met';
    if (root === undefined) return 'time limit';
    const partial = await this.#dive(root, this.#aim(0), 0);
    if (!this.#met()) await this.#branch(root);
    if (!this.#met()) await this.#masterOfPool();
    if (this.#impossible() || this.#met()) return 'bound met';
    if (this.#request.brief) {
      await this.#cutCheaper(0);
      return this.#left() <= 0 ? 'time limit' : 'pattern limit';
    }
    const listed = await this.#masterOfAll(root);
    if (listed !== undefined) return listed;
    if (root.finished) await this.#masterOfLikely(root);
    if (!this.#met() && this.#manyCosts()) await this.#cutCheaper(0);
    if (!this.#met()) await this.#refill(root, partial, this.#aim(0), 0);
    let best = this.#cost;
    for (let dives = 1, vain = 0; dives <= DIVES && vain < DIVES_IN_VAIN; dives++, vain++) {
      if (this.#impossible() || this.#met()) return 'bound met';
      if (this.#left() <= 0) return 'time limit';
      if (this.#cost < best) vain = 0;
      best = this.#cost;
      const next = await this.#dive(root, this.#aim(dives), dives);
      if (this.#manyCosts()) await this.#cutCheaper(dives);
      if (!this.#met()) await this.#refill(root, next, this.#aim(dives), dives);
      if (!this.#met() && dives % 5 === 0) await this.#masterOfPool();
    }
    return this.#met() ? 'bound met' : 'pattern limit';
  }

  result(ending: SearchEnding): SearchResult {
    const bound = this.#proven
      ? Math.min(this.#cost, this.#above)
      : Math.min(this.#bound(this.#scaled), this.#cost);
    return {
      planned: this.#planned,
      cost: this.#cost,
      bound: bound >= this.#above ? Number.POSITIVE_INFINITY : bound,
      ending,
    };
  }

  /** Patterns of the quick pricer first, then all patterns of the kind. */
  async #solveRoot(): Promise<LinearResult | undefined> {
    const { ground } = this;
    const quick = ground.pricerFor(ground.demand);
    if (quick !== ground.pricer) {
      const first = await solveLinear({
        ...ground,
        pricer: quick,
        master: this.#master,
        enough: () => false,
        deadline: this.#within(SHARE_OF_QUICK),
      });
      ground.effort.rounds += first.rounds;
    }
    const root = await solveLinear({
      ...ground,
      master: this.#master,
      enough: (scaled) => this.#meets(scaled),
      deadline: this.#within(SHARE_OF_ROOT),
    });
    ground.effort.rounds += root.rounds;
    this.#raise(root.bound.scaled);
    this.#tell('linear plan');
    return root.answer === undefined ? undefined : root;
  }

  /**
   * Dives, and cuts what is left as well as a cost that is to be reached allows;
   * then what is still missing at whatever it costs.
   */
  async #dive(root: LinearResult, target: number, round: number): Promise<Partial> {
    const { ground } = this;
    const taken = await dive(ground, {
      master: this.#master,
      root,
      sheetsLeft: SHEETS_LEFT[round % SHEETS_LEFT.length],
      random: round === 0 ? undefined : seededRandom(this.#request.seed + round),
    });
    this.#offer(withFirstFit(ground, taken));
    const weights = this.#weights(root);
    const affordable = withinCost(ground, taken, this.#measure, target);
    const bare: Partial = {
      planned: affordable,
      missing: missingWeight(ground.demand, affordable, weights),
    };
    if (this.#met() || this.#left() <= 0) return bare;
    const partial = (await refillRest(ground, affordable, weights, target, [])) ?? bare;
    if (partial.missing === 0) this.#offer(partial.planned);
    else this.#offer(withFirstFit(ground, partial.planned));
    return partial;
  }

  /** Local search on what a plan of the cost to be reached leaves uncut. */
  async #refill(root: LinearResult, start: Partial, target: number, round: number): Promise<void> {
    const { ground } = this;
    if (target > this.#target()) return;
    const random = seededRandom(this.#request.seed + round);
    const refiller = new Refiller(ground, this.#weights(root), target, random);
    let partial = start;
    for (let vain = 0; partial.missing > 0 && vain < STEPS_IN_VAIN && this.#left() > 0; vain++) {
      const next = await refiller.step(partial);
      if (next.missing < partial.missing) {
        vain = 0;
        this.#offer(withFirstFit(ground, next.planned));
      }
      partial = next;
      if (refiller.exhausted) break;
      this.#tell('local search');
    }
    if (partial.missing === 0) this.#offer(partial.planned);
  }

  /** Local search on the cost of the best plan. */
  async #cutCheaper(round: number): Promise<void> {
    const random = seededRandom(this.#request.seed + 1000 + round);
    const choice = new SheetChoice(random);
    let planned = this.#planned;
    for (let vain = 0; planned !== undefined && vain < STEPS_IN_VAIN; vain++) {
      if (this.#met() || this.#left() <= 0 || choice.exhausted) return;
      const cost = this.#cost;
      planned = await cutAgain(this.#ground, planned, choice);
      this.#offer(planned);
      if (this.#cost < cost) vain = 0;
      this.#tell('local search');
    }
  }

  /** Whether many costs lie between the bound and the best plan. */
  #manyCosts(): boolean {
    let cost = this.#cost;
    for (let steps = 0; steps < FEW_COSTS; steps++) {
      cost = this.#reach.below(cost);
      if (cost < this.#bound(this.#scaled)) return false;
    }
    return true;
  }

  async #masterOfPool(): Promise<void> {
    const { book } = this.#ground;
    if (book.bands.length + book.sheets.length > MOST_IN_POOL) return;
    await this.#solveWhole(NODES_TO_FIND);
  }

  async #branch(root: LinearResult): Promise<void> {
    const { ground } = this;
    const scaled = await branchOnSupplies(
      { ...ground, deadline: this.#within(SHARE_TO_BRANCH) },
      this.#master,
      root,
      (value) => this.#meets(value),
    );
    this.#raise(Math.min(scaled, this.#above * ground.scale));
    this.#tell('branching');
  }

  /**
   * The integer master over all patterns that a better plan could contain.
   * @returns undefined where there are too many of them
   */
  async #masterOfAll(root: LinearResult): Promise<SearchEnding | undefined> {
    const { ground } = this;
    const { pricer, scale, objective } = ground;
    if (pricer.within === undefined || objective.caps.length > 0) return undefined;
    if (ground.classes.some(({ supplies }) => supplies.some(({ least }) => least > 0))) {
      return undefined;
    }
    const gap = this.#target() * scale - root.bound.scaled;
    const { multipliers, classCost } = root.bound;
    const list = pricer.within(multipliers.pieces, classCost, gap, MOST_TO_PROVE);
    if (list === undefined) return undefined;
    const book = ground.newBook();
    book.addList(list);
    const status = await this.#solveWhole(undefined, { ...ground, book });
    if (status !== 'infeasible' && status !== 'optimal')
      return this.#met() ? 'bound met' : undefined;
    this.#proven = true;
    return 'all patterns within the gap searched';
  }

  /** The integer master over the patterns that a better plan is most likely to contain. */
  async #masterOfLikely(root: LinearResult): Promise<void> {
    const { ground } = this;
    const { pricer, scale } = ground;
    if (pricer.within === undefined) return;
    const { multipliers, classCost } = root.bound;
    let gap = this.#target() * scale - root.bound.scaled;
    for (; gap >= 1; gap = Math.floor(gap / 2)) {
      const list = pricer.within(multipliers.pieces, classCost, gap, MOST_LIKELY);
      if (list === undefined) continue;
      const book = ground.newBook();
      book.addList(list);
      await this.#solveWhole(NODES_TO_FIND, { ...ground, book });
      return;
    }
  }

  async #solveWhole(
    nodes: number | undefined,
    ground: SearchGround = this.#ground,
  ): Promise<WholeAnswer['status']> {
    if (this.#left() <= 0) return 'stopped';
    // Surplus that is taken out afterwards may make a plan of the same cost cheaper.
    const surplus = ground.bare !== undefined && Number.isFinite(this.#cost);
    const cap = { measure: this.#measure, atMost: surplus ? this.#cost : this.#target() };
    const seconds = this.#left() * (nodes === undefined ? 1 : SHARE_TO_FIND);
    const { status, planned } = await solveWhole(ground, cap, seconds, nodes);
    this.#offer(planned);
    return status;
  }

  /** Takes a plan that is better than the best so far, once its cost has been counted again. */
  #offer(offered: readonly Planned[] | undefined): void {
    if (offered === undefined) return;
    const { classes, demand, objective, bare } = this.#ground;
    if (demandLeft(demand, offered).some((quantity) => quantity > 0)) return;
    const planned = bare?.(offered) ?? offered;
    const used = sheetsUsed(planned, classes.length);
    const kept = keptCoins(planned);
    const of = (measure: Measure) => totalCost(classes, used, measure) - measure.coin * kept;
    if (!objective.caps.every(({ measure, atMost }) => of(measure) <= atMost)) return;
    const cost = of(this.#measure);
    if (cost >= this.#cost) return;
    this.#cost = cost;
    this.#planned = planned;
    this.#request.onBetter?.(planned, this.#shownBound());
    this.#tell('better plan');
  }

  /** How much each missing piece counts: its part in the cost of the linear plan. */
  #weights(root: LinearResult): readonly number[] {
    const { pieces } = root.bound.multipliers;
    const most = Math.max(1, ...pieces);
    return Array.from(pieces, (value) => 1 + Math.round((1000 * value) / most));
  }

  #raise(scaled: number): void {
    this.#scaled = Math.max(this.#scaled, scaled);
  }

  /** A deadline when so much of the time that is left now is over. */
  #within(share: number): Deadline {
    const until = this.#left() * (1 - share);
    return { left: () => this.#left() - until };
  }

  #left(): number {
    return this.#ground.deadline.left();
  }

  /** The most that a plan may cost to be better than the best so far. */
  #target(): number {
    return this.#planned === undefined ? this.#above : this.#reach.below(this.#cost);
  }

  /** A cost to aim for: the least that the bound allows, but now and then halfway to it. */
  #aim(round: number): number {
    const below = this.#target();
    const least = Math.min(below, this.#bound(this.#scaled));
    if (round % 3 < 2) return least;
    return Math.min(below, this.#reach.atLeast(Math.ceil((least + below) / 2)));
  }

  #bound(scaled: number): number {
    // No plan gains by cutting: what goes to the rack is never worth more than what came from it.
    return this.#reach.atLeast(Math.max(0, Math.ceil(scaled / this.#ground.scale)));
  }

  #meets(scaled: number): boolean {
    return this.#planned !== undefined && this.#bound(scaled) >= this.#cost;
  }

  #met(): boolean {
    return this.#proven || this.#meets(this.#scaled);
  }

  #impossible(): boolean {
    return this.#bound(this.#scaled) >= this.#above;
  }

  #tell(phase: string): void {
    const { bands, sheets } = this.#ground.book;
    this.#request.onProgress?.({
      phase,
      cost: this.#cost,
      bound: this.#shownBound(),
      columns: bands.length + sheets.length,
    });
  }

  /** A bound that rests on leaving out what costs as much as the best plan can come out above it. */
  #shownBound(): number {
    return Math.min(this.#bound(this.#scaled), this.#cost);
  }

  get ground(): SearchGround {
    return this.#ground;
  }
}
