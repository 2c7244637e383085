import { type Measure, money, totalCost } from '../master/objective.js';
import { ReachableCosts } from '../master/reachable-cost.js';
import { aboveEveryPlan } from '../master/shortage.js';
import type { SearchGround } from './ground.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './planned.js';

/** How far a search has come. */
export interface SearchStep {
  readonly phase: string;
  /** Of the best plan so far; `Infinity` without one. */
  readonly cost: number;
  readonly bound: number;
  /** Patterns so far. */
  readonly columns: number;
}

export interface Watchers {
  /** Told of whatever changes. */
  readonly onProgress?: ((step: SearchStep) => void) | undefined;
  /** Told of every plan that is better than those before, and of the bound so far. */
  readonly onBetter?: ((planned: readonly Planned[], bound: number) => void) | undefined;
}

/** Which plans are taken, and who is told. */
export interface Offers extends Watchers {
  /** A plan that costs more is of no use; absent where any is. */
  readonly atMost?: number | undefined;
}

/** Where so many costs lie between the bound and a plan, the plan is bettered step by step. */
const FEW_COSTS = 3;

/** The best plan of a search so far, and the bound that says how good it is. */
export class Incumbent {
  readonly measure: Measure;
  readonly #ground: SearchGround;
  readonly #watchers: Watchers;
  readonly #reach: ReachableCosts;
  /** Costs more than any plan, or any that is of use. */
  readonly #above: number;
  #planned: readonly Planned[] | undefined;
  #cost = Number.POSITIVE_INFINITY;
  /** The bound in units of 1/scale. */
  #scaled = Number.NEGATIVE_INFINITY;
  /** True where a search of all patterns has proven the plan. */
  #proven = false;

  constructor(ground: SearchGround, { atMost, ...watchers }: Offers) {
    const { classes, demand, objective } = ground;
    this.#ground = ground;
    this.#watchers = watchers;
    this.measure = objective.cost ?? money;
    const above = aboveEveryPlan(classes, demand, objective);
    this.#above = atMost === undefined ? above : Math.min(above, atMost + 1);
    const valued =
      this.measure.coin > 0 &&
      (ground.keptAtMost.some((coins) => coins > 0) ||
        classes.some((entry) => entry.supplies.some(({ leftOver }) => leftOver > 0)));
    const prices = classes.flatMap((entry) =>
      entry.supplies.map((supply) => this.measure.of(supply) * supply.unit),
    );
    // Where remnants have a value, any whole number of coins can be the cost.
    this.#reach = new ReachableCosts(valued ? [1] : prices, this.#above);
  }

  get planned(): readonly Planned[] | undefined {
    return this.#planned;
  }

  /** Of the best plan; `Infinity` without one. */
  get cost(): number {
    return this.#cost;
  }

  /** No plan costs less; `Infinity` where it is proven that there is none. */
  get bound(): number {
    const bound = this.#proven
      ? Math.min(this.#cost, this.#above)
      : Math.min(this.#roundedUp(this.#scaled), this.#cost);
    return bound >= this.#above ? Number.POSITIVE_INFINITY : bound;
  }

  /** The most that a plan may cost to be better than the best so far. */
  get target(): number {
    return this.#planned === undefined ? this.#above : this.#reach.below(this.#cost);
  }

  /** Whether the plan is proven best. */
  get met(): boolean {
    return this.#proven || this.wouldMeet(this.#scaled);
  }

  get impossible(): boolean {
    return this.#roundedUp(this.#scaled) >= this.#above;
  }

  /** Whether many costs lie between the bound and the best plan. */
  get manyCosts(): boolean {
    let cost = this.#cost;
    for (let steps = 0; steps < FEW_COSTS; steps++) {
      cost = this.#reach.below(cost);
      if (cost < this.#roundedUp(this.#scaled)) return false;
    }
    return true;
  }

  /** Whether a bound in units of 1/scale would prove the plan. */
  wouldMeet(scaled: number): boolean {
    return this.#planned !== undefined && this.#roundedUp(scaled) >= this.#cost;
  }

  /** A cost to aim for: by turns halfway to what the bound allows, and the next below the best plan. */
  aim(round: number): number {
    const below = this.target;
    if (round % 2 === 1) return below;
    const least = Math.min(below, this.#roundedUp(this.#scaled));
    return Math.min(below, this.#reach.atLeast(Math.ceil((least + below) / 2)));
  }

  /** The least cost that is no less than this, and not below the bound; or what is left to better. */
  costFrom(coins: number): number {
    const least = Math.max(0, coins, this.#scaled / this.#ground.scale);
    return Math.min(this.target, this.#reach.atLeast(Math.ceil(least)));
  }

  raise(scaled: number): void {
    this.#scaled = Math.max(this.#scaled, Math.min(scaled, this.#above * this.#ground.scale));
  }

  /** Every pattern that a better plan could contain was searched. */
  prove(): void {
    this.#proven = true;
  }

  /** Takes a plan that is better than the best so far, once its cost has been counted again. */
  offer(offered: readonly Planned[] | undefined): void {
    if (offered === undefined) return;
    const { classes, demand, objective, bare } = this.#ground;
    if (demandLeft(demand, offered).some((quantity) => quantity > 0)) return;
    const planned = bare?.(offered) ?? offered;
    const used = sheetsUsed(planned, classes.length);
    const kept = keptCoins(planned);
    const of = (measure: Measure) => totalCost(classes, used, measure) - measure.coin * kept;
    if (!objective.caps.every(({ measure, atMost }) => of(measure) <= atMost)) return;
    const cost = of(this.measure);
    if (cost >= Math.min(this.#cost, this.#above)) return;
    this.#cost = cost;
    this.#planned = planned;
    this.#watchers.onBetter?.(planned, this.#shownBound());
    this.tell('better plan');
  }

  tell(phase: string): void {
    const { bands, sheets } = this.#ground.book;
    this.#watchers.onProgress?.({
      phase,
      cost: this.#cost,
      bound: this.#shownBound(),
      columns: bands.length + sheets.length,
    });
  }

  #roundedUp(scaled: number): number {
    // No plan gains by cutting: what goes to the rack is never worth more than what came from it.
    return this.#reach.atLeast(Math.max(0, Math.ceil(scaled / this.#ground.scale)));
  }

  /** A bound that rests on leaving out what costs as much as the best plan can come out above it. */
  #shownBound(): number {
    return Math.min(this.#roundedUp(this.#scaled), this.#cost);
  }
}
