import type { Deadline } from '../deadline.js';
import type { BandBook } from '../master/band-book.js';
import { BandMaster } from '../master/band-master.js';
import { type LinearResult, solveLinear } from '../master/column-generation.js';
import type { SearchEnding } from '../plan.js';
import { seededRandom } from '../random.js';
import { branchOnSupplies } from './branch-on-supplies.js';
import { withFirstFit, withinCost } from './complete-plan.js';
import { coverSheetsFirst } from './cover-sheets-first.js';
import { dive } from './dive.js';
import type { SearchGround } from './ground.js';
import { guideOf } from './guide.js';
import { Incumbent, type Watchers } from './incumbent.js';
import { likelyBook, masterOfAll, masterOfLikely, masterOfPool } from './listed-masters.js';
import type { Planned } from './planned.js';
import {
  cutAgain,
  missingWeight,
  type Partial,
  Refiller,
  type RefillGuide,
  refillRest,
  settleRest,
} from './refill.js';
import { SheetChoice } from './sheet-choice.js';

export type { SearchStep } from './incumbent.js';

export interface SearchRequest extends Watchers {
  readonly ground: SearchGround;
  /** A plan known already. */
  readonly known: readonly Planned[] | undefined;
  /** True for a short search that does without the largest masters and repeated dives. */
  readonly brief: boolean;
  readonly seed: number;
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

/** Sheets that a dive leaves to the integer master, in turn. */
const SHEETS_LEFT = [6, 4, 9];
/** Steps of local search in vain before patterns are listed, and after which it starts anew. */
const STEPS_BEFORE_LISTING = 6;
/** Sheets are settled so often before local search goes on from the best of it. */
const STARTS_EACH = 4;
/** Local searches before patterns are listed where there are many of each kind of piece. */
const STARTS_OF_MANY = 12;
const STEPS_IN_VAIN = 60;
/** Share of the time that the linear plan over the quick pricer's patterns may take. */
const SHARE_OF_QUICK = 0.2;
/** Share of the time that the linear plan over all patterns of the kind may take. */
const SHARE_OF_ROOT = 0.5;
/** Share of the time left that branching may take. */
const SHARE_TO_BRANCH = 0.25;
/** With so many of each kind of piece, likely patterns are listed: so many, that fall short by so much of a sheet. */
const MANY_OF_EACH = 8;
const MOST_LISTED = 3_000;
const GAP_TO_LIST = 0.5;
/** Local searches, each from another start, and those in vain after which the search ends. */
const ROUNDS = 60;
const ROUNDS_IN_VAIN = 10;

/**
 * Finds a plan of least cost and the bound that says how good it is. Cheap means
 * come first and it ends as soon as plan and bound meet: column generation for
 * the bound; a dive for a plan; branching on supplies to raise the bound; some local
 * search; the integer master over every pattern that a better plan could contain,
 * which proves the plan or betters it; then local search from other starts while
 * time lasts.
 */
export async function search(request: SearchRequest): Promise<SearchResult> {
  const hunt = new Hunt(request);
  try {
    const ending = await hunt.run();
    const { planned, cost, bound } = hunt.incumbent;
    return { planned, cost, bound, ending };
  } finally {
    hunt.close();
  }
}

/** The state of one search. */
class Hunt {
  readonly incumbent: Incumbent;
  readonly #ground: SearchGround;
  readonly #request: SearchRequest;
  readonly #master: BandMaster;
  #listed: { readonly book: BandBook | undefined } | undefined;

  constructor(request: SearchRequest) {
    const { ground, known } = request;
    this.#request = request;
    this.#ground = ground;
    this.incumbent = new Incumbent(ground, request);
    this.incumbent.offer(known);
    for (const { pattern } of known ?? []) ground.book.addPattern(pattern);
    this.#master = new BandMaster(ground);
  }

  close(): void {
    this.#master.close();
  }

  async run(): Promise<SearchEnding> {
    const { incumbent } = this;
    const ground = this.#ground;
    const root = await this.#solveRoot();
    if (this.#over) return 'bound met';
    if (root === undefined) return 'time limit';
    const guide = guideOf(ground, root);
    await this.#dive(root, 0);
    if (!incumbent.met) await this.#branch(root);
    if (!incumbent.met) await masterOfPool(ground, incumbent);
    if (this.#over) return 'bound met';
    if (this.#request.brief) {
      await this.#cutCheaper(guide, 0);
      return this.#left() <= 0 ? 'time limit' : 'pattern limit';
    }
    const starts = this.#likely(root) === undefined ? 1 : STARTS_OF_MANY;
    for (let round = 0; round < starts && !incumbent.met && this.#left() > 0; round++) {
      await this.#refill(root, guide, undefined, round, STEPS_BEFORE_LISTING);
    }
    if (incumbent.met) return 'bound met';
    if (await masterOfAll(ground, incumbent, root)) return 'all patterns within the gap searched';
    if (!incumbent.met && root.finished) await masterOfLikely(ground, incumbent, root);
    let best = incumbent.cost;
    let taken: readonly Planned[] | undefined;
    for (let round = 0, vain = 0; round <= ROUNDS && vain < ROUNDS_IN_VAIN; round++, vain++) {
      if (this.#over) return 'bound met';
      if (this.#left() <= 0) return 'time limit';
      if (incumbent.cost < best) vain = 0;
      best = incumbent.cost;
      if (incumbent.manyCosts) await this.#cutCheaper(guide, round);
      if (!incumbent.met) await this.#refill(root, guide, taken, round, STEPS_IN_VAIN);
      if (!incumbent.met && round % 5 === 4) await masterOfPool(ground, incumbent);
      if (!incumbent.met) taken = await this.#dive(root, round + 1);
    }
    return incumbent.met ? 'bound met' : 'pattern limit';
  }

  /** Patterns of the quick pricer first, then all patterns of the kind. */
  async #solveRoot(): Promise<LinearResult | undefined> {
    const ground = this.#ground;
    const quick = ground.pricerFor(ground.demand);
    if (quick !== ground.pricer) {
      const first = await solveLinear({
        ...ground,
        pricer: quick,
        master: this.#master,
        enough: () => false,
        deadline: this.#share(SHARE_OF_QUICK),
      });
      ground.effort.rounds += first.rounds;
    }
    const root = await solveLinear({
      ...ground,
      master: this.#master,
      enough: (scaled) => this.incumbent.wouldMeet(scaled),
      deadline: this.#share(SHARE_OF_ROOT),
    });
    ground.effort.rounds += root.rounds;
    this.incumbent.raise(root.bound.scaled);
    this.incumbent.tell('linear plan');
    return root.answer === undefined ? undefined : root;
  }

  /** Dives, and cuts what is left by the rule of thumb. */
  async #dive(root: LinearResult, round: number): Promise<readonly Planned[]> {
    const ground = this.#ground;
    const taken = await dive(ground, {
      master: this.#master,
      root,
      sheetsLeft: SHEETS_LEFT[round % SHEETS_LEFT.length],
      random: round === 0 ? undefined : seededRandom(this.#request.seed + round),
    });
    this.incumbent.offer(withFirstFit(ground, taken));
    return taken;
  }

  /**
   * Local search on what a plan of a cost to be reached leaves uncut.
   * @param taken sheets of a dive to start from; absent to settle all bands anew
   */
  async #refill(
    root: LinearResult,
    guide: RefillGuide,
    taken: readonly Planned[] | undefined,
    round: number,
    steps: number,
  ): Promise<void> {
    const ground = this.#ground;
    const { incumbent } = this;
    const random = seededRandom(this.#request.seed + round);
    const listed = taken === undefined ? this.#likely(root) : undefined;
    let target = listed === undefined ? incumbent.aim(round) : incumbent.nearBound;
    let refiller = new Refiller(ground, guide, target, random);
    let partial = this.#within(guide, taken ?? [], target);
    const again = { seeds: [], cutoff: undefined };
    const start =
      listed !== undefined
        ? await this.#sheetsFirst(guide, listed, target, random)
        : taken === undefined
          ? await settleRest(ground, guide, partial.planned, target, random, again)
          : await refillRest(ground, guide, partial.planned, target, again);
    (globalThis as unknown as { LOG?: (t: string) => void }).LOG?.(
      `target ${target} start ${start?.missing}`,
    );
    if (start !== undefined && start.missing <= partial.missing) partial = start;
    this.#complete(partial);
    for (let vain = 0; vain < steps && this.#left() > 0; vain++) {
      if (partial.missing === 0) {
        // Where sheets can be settled first, another start is better than a cut down plan.
        if (incumbent.met || listed !== undefined) return;
        target = incumbent.target;
        partial = this.#within(guide, partial.planned, target);
        refiller = new Refiller(ground, guide, target, random);
      }
      const next = await refiller.step(partial);
      if (next.missing < partial.missing) {
        vain = 0;
        this.#complete(next);
      }
      partial = next;
      incumbent.tell('local search');
      if (refiller.exhausted) return;
    }
  }

  /** Likely patterns where there are so many of each piece that it pays to list them; once. */
  #likely(root: LinearResult): BandBook | undefined {
    const { demand, scale } = this.#ground;
    const pieces = demand.reduce((sum, quantity) => sum + quantity, 0);
    const kinds = demand.filter((quantity) => quantity > 0).length;
    if (pieces < MANY_OF_EACH * kinds) return undefined;
    const gap = GAP_TO_LIST * Math.max(0, ...root.bound.classCost.map((cost) => cost / scale));
    this.#listed ??= { book: likelyBook(this.#ground, root, gap, MOST_LISTED) };
    return this.#listed.book;
  }

  async #sheetsFirst(
    guide: RefillGuide,
    book: BandBook,
    target: number,
    random: () => number,
  ): Promise<Partial | undefined> {
    const { demand, objective } = this.#ground;
    const caps = [...objective.caps, { measure: this.incumbent.measure, atMost: target }];
    const { weights } = guide;
    let best: Partial | undefined;
    for (let start = 0; start < STARTS_EACH && this.#left() > 0; start++) {
      const covered = await coverSheetsFirst(this.#ground, { book, caps, weights, random });
      if (covered?.planned === undefined) continue;
      const { planned } = covered;
      const missing = missingWeight(demand, planned, weights);
      if (missing < (best?.missing ?? Number.POSITIVE_INFINITY)) best = { planned, missing };
      if (missing === 0) break;
      this.incumbent.tell('local search');
    }
    return best;
  }

  /** What a cost allows of a plan, the sheets that waste most left out. */
  #within(guide: RefillGuide, planned: readonly Planned[], target: number): Partial {
    const ground = this.#ground;
    const thrifty = [...planned].sort((a, b) => guide.waste(a.pattern) - guide.waste(b.pattern));
    const kept = withinCost(ground, thrifty, this.incumbent.measure, target);
    return { planned: kept, missing: missingWeight(ground.demand, kept, guide.weights) };
  }

  /** Offers a plan, what it lacks cut at whatever it costs. */
  #complete({ planned, missing }: Partial): void {
    this.incumbent.offer(missing === 0 ? planned : withFirstFit(this.#ground, planned));
  }

  /** Local search on the cost of the best plan. */
  async #cutCheaper(guide: RefillGuide, round: number): Promise<void> {
    const { incumbent } = this;
    const random = seededRandom(this.#request.seed + 1000 + round);
    const choice = new SheetChoice(random, guide.waste);
    let { planned } = incumbent;
    for (let vain = 0; planned !== undefined && vain < STEPS_IN_VAIN; vain++) {
      if (incumbent.met || this.#left() <= 0 || choice.exhausted) return;
      const { cost } = incumbent;
      planned = await cutAgain(this.#ground, planned, choice);
      incumbent.offer(planned);
      if (incumbent.cost < cost) vain = 0;
      incumbent.tell('local search');
    }
  }

  async #branch(root: LinearResult): Promise<void> {
    const ground = this.#ground;
    const scaled = await branchOnSupplies(
      { ...ground, deadline: this.#share(SHARE_TO_BRANCH) },
      this.#master,
      root,
      (value) => this.incumbent.wouldMeet(value),
    );
    this.incumbent.raise(scaled);
    this.incumbent.tell('branching');
  }

  get #over(): boolean {
    return this.incumbent.met || this.incumbent.impossible;
  }

  /** A deadline when so much of the time that is left now is over. */
  #share(share: number): Deadline {
    const until = this.#left() * (1 - share);
    return { left: () => this.#left() - until };
  }

  #left(): number {
    return this.#ground.deadline.left();
  }
}
