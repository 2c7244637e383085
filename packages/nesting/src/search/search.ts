import { shareOf } from '../deadline.js';
import { areaBound } from '../master/area-bound.js';
import { BandMaster } from '../master/band-master.js';
import type { LinearResult } from '../master/column-generation.js';
import type { Multipliers } from '../master/exact-bound.js';
import type { SearchEnding } from '../plan.js';
import { seededRandom } from '../random.js';
import { withFirstFit } from './complete-plan.js';
import { dive } from './dive.js';
import type { SearchGround } from './ground.js';
import { Incumbent, type Offers } from './incumbent.js';
import { leaveLargerRemnant } from './larger-remnant.js';
import { masterOfAll, masterOfLikely, masterOfPool, mayList } from './listed-masters.js';
import { LocalSearch } from './local-search.js';
import { masterOfEveryPattern } from './master-of-every-pattern.js';
import type { Planned } from './planned.js';
import { BoundRaising } from './raise-bound.js';
import { rootPlan } from './root-plan.js';
import { RoughBranches } from './rough-branches.js';
import { ruleOutCost } from './rule-out-cost.js';
import { SimplerPlans } from './simpler-plans.js';

export type { SearchStep } from './incumbent.js';

export interface SearchRequest extends Offers {
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
  /** What bounded the linear plan; undefined where there was none. */
  readonly multipliers: Multipliers | undefined;
  readonly ending: SearchEnding;
}

/** Sheets that a dive leaves to the integer master, in turn. */
const SHEETS_LEFT = [6, 4, 9];
/** Steps of local search in vain before patterns are listed, and after which it starts anew. */
const STEPS_BEFORE_LISTING = 6;
const STEPS_IN_VAIN = 60;
/** Local searches before patterns are listed where there are many of each kind of piece. */
const STARTS_OF_MANY = 12;
/** Local searches after which it is tried to rule out a last step of cost that they could not save. */
const STARTS_BEFORE_RULING_OUT = 2;
/**
 * Steps of local search in a brief search. A number and no share of the time ends it, so that the
 * same order gives the same plan on a busy machine.
 */
const BRIEF_STEPS = 6;
/** How a search ends by which a master over all patterns proves the plan. */
const ALL_SEARCHED = 'all patterns within the gap searched';
/** Share of the time left in which a plan is sought before numbers of sheets are searched to the end. */
const SHARE_TO_FIND_FIRST = 0.3;
/** Share of the time left that may be taken by searching each number of sheets to the end once a plan was sought. */
const SHARE_TO_CLOSE_SOON = 0.25;
/** The same once local search has bettered the plan. */
const SHARE_TO_CLOSE = 0.6;
/** Share of the time left that branching with rough patterns may take at first. */
const SHARE_OF_ROUGH = 0.2;
/** Local searches, each from another start, and those in vain after which the search ends. */
const ROUNDS = 60;
const ROUNDS_IN_VAIN = 10;
/** The same where sheets are settled first: every round starts from others then, and most end in vain. */
const ROUNDS_OF_MANY = 1_000;

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
    return { planned, cost, bound, multipliers: hunt.multipliers, ending };
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
  readonly #rough: RoughBranches | undefined;
  readonly #simpler: SimplerPlans;
  #multipliers: Multipliers | undefined;
  /** The last cost that was tried to be ruled out. */
  #triedToRuleOut: number | undefined;

  constructor(request: SearchRequest) {
    const { ground, known } = request;
    this.#request = request;
    this.#ground = ground;
    this.incumbent = new Incumbent(ground, request);
    this.incumbent.raise(areaBound(ground));
    for (const { pattern } of known ?? []) ground.book.addPattern(pattern);
    this.incumbent.offer(known);
    this.#master = new BandMaster(ground);
    this.#simpler = new SimplerPlans(ground, this.incumbent);
    this.#rough =
      ground.rough && new RoughBranches(ground, ground.rough, this.incumbent, this.#master);
  }

  close(): void {
    this.#rough?.close();
    this.#master.close();
  }

  /** What bounded the linear plan, once there is one. */
  get multipliers(): Multipliers | undefined {
    return this.#multipliers;
  }

  async run(): Promise<SearchEnding> {
    const { incumbent } = this;
    const ground = this.#ground;
    if (this.#over) return 'bound met';
    if (this.#rough !== undefined && this.#left() > 0) {
      incumbent.raise(await this.#rough.raise(shareOf(ground.deadline, SHARE_OF_ROUGH), false));
      incumbent.tell('branching');
      if (this.#over) return 'bound met';
    }
    await this.#simpler.begin();
    if (this.#over) return 'bound met';
    const root = await this.#solveRoot();
    if (this.#over) return 'bound met';
    if (root === undefined) return 'time limit';
    await this.#dive(root, 0);
    if (!mayList(ground) && (await masterOfEveryPattern(ground, incumbent))) return ALL_SEARCHED;
    const raising = new BoundRaising(ground, incumbent, this.#master, root, this.#rough);
    if (!incumbent.met && raising.closesSoon) {
      // Searching numbers to the end may take all the time, and find nothing.
      const deadline = shareOf(ground.deadline, SHARE_TO_FIND_FIRST);
      await masterOfPool({ ...ground, deadline }, incumbent);
    }
    if (!incumbent.met) await raising.begin();
    if (this.#simpler.many && !incumbent.met) await leaveLargerRemnant(ground, incumbent);
    const local = new LocalSearch(ground, incumbent, root, this.#request.seed);
    const { brief } = this.#request;
    // Of a hundred steps of a brief search in orders of many of each, three came to anything.
    if (brief && local.sheetsFirst) return this.#ending;
    // Of many of each piece it takes seconds, and finds nothing that settling sheets does not.
    if (!incumbent.met && !local.sheetsFirst) await masterOfPool(ground, incumbent);
    if (!incumbent.met && raising.mayClose && !raising.closesSoon) {
      await raising.raise(SHARE_TO_CLOSE_SOON, true);
    }
    if (this.#over) return 'bound met';
    if (brief) {
      await local.cutCheaper(0, BRIEF_STEPS);
      return this.#ending;
    }
    const starts = local.sheetsFirst ? STARTS_OF_MANY : 1;
    for (let round = 0; round < starts && !incumbent.met && this.#left() > 0; round++) {
      await local.refill(undefined, round, STEPS_BEFORE_LISTING);
      if (round + 1 >= STARTS_BEFORE_RULING_OUT && (await this.#ruledOut(local))) {
        return ALL_SEARCHED;
      }
    }
    if (!incumbent.met && raising.mayGoOn) await raising.raise(SHARE_TO_CLOSE, true);
    if (incumbent.met) return 'bound met';
    if (await masterOfAll(ground, incumbent, root)) return ALL_SEARCHED;
    if (mayList(ground) && (await masterOfEveryPattern(ground, incumbent))) return ALL_SEARCHED;
    if (!incumbent.met && root.finished) await masterOfLikely(ground, incumbent, root);
    let best = incumbent.cost;
    const rounds = local.sheetsFirst ? ROUNDS_OF_MANY : ROUNDS;
    const mostInVain = local.sheetsFirst ? ROUNDS_OF_MANY : ROUNDS_IN_VAIN;
    for (let round = 0, vain = 0; round <= rounds && vain < mostInVain; round++, vain++) {
      if (this.#over) return 'bound met';
      if (this.#left() <= 0) return 'time limit';
      if (incumbent.cost < best) vain = 0;
      best = incumbent.cost;
      if (incumbent.manyCosts) await local.cutCheaper(round);
      const again = local.sheetsFirst || round === 0 || incumbent.met;
      const taken = again ? undefined : await this.#dive(root, round);
      if (!incumbent.met) await local.refill(taken, starts + round, STEPS_IN_VAIN);
      if (!incumbent.met && round % 5 === 4) await masterOfPool(ground, incumbent);
    }
    return this.#ending;
  }

  async #solveRoot(): Promise<LinearResult | undefined> {
    const root = await rootPlan(
      this.#ground,
      this.#master,
      (scaled) => this.incumbent.wouldMeet(scaled),
      () => this.#simpler.inTwoStages(),
    );
    this.#multipliers = root.bound.asked;
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

  /** Whether the best plan is proven by ruling out all that cost less; tried once for a cost. */
  async #ruledOut(local: LocalSearch): Promise<boolean> {
    const { incumbent } = this;
    const { target, bound, met } = incumbent;
    if (met || bound < target || this.#triedToRuleOut === target || !mayList(this.#ground)) {
      return false;
    }
    this.#triedToRuleOut = target;
    const ruledOut = await ruleOutCost(this.#ground, incumbent, local.losses);
    if (ruledOut) incumbent.prove();
    return ruledOut;
  }

  get #ending(): SearchEnding {
    if (this.incumbent.met) return 'bound met';
    return this.#left() <= 0 ? 'time limit' : 'pattern limit';
  }

  get #over(): boolean {
    return this.incumbent.met || this.incumbent.impossible;
  }

  #left(): number {
    return this.#ground.deadline.left();
  }
}
