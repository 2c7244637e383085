import { type Measure, money, totalCost } from '../master/objective.js';
import { without } from './class-supplies.js';
import { cover } from './cover.js';
import type { SearchGround } from './ground.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './planned.js';

/** A plan that keeps to a cost but may leave pieces uncut. */
export interface Partial {
  readonly planned: readonly Planned[];
  /** Weight of the pieces it leaves uncut. */
  readonly missing: number;
}

/** Sheets that are freed at first, and at the fewest. */
const FREED_FIRST = 4;
const FEWEST_FREED = 2;
/** By how much the number of freed sheets grows where they were solved; it falls by 1 where not. */
const MORE_EACH_TIME = 0.05;
/** So often all sheets are freed together before the search starts anew. */
const TIMES_ALL = 4;
/** Most sheets that are freed at a time. */
const MOST_FREED = 30;
/** Nodes that one integer master may take. */
const NODES_EACH = 40;

/**
 * Local search on a plan that keeps to a cost: each step frees some sheets, and
 * cuts their pieces and the missing ones again as well as the same money allows.
 * It frees more sheets at a time where that is solved with ease, and fewer where
 * it is not.
 */
export class Refiller {
  readonly #ground: SearchGround;
  readonly #weights: readonly number[];
  readonly #atMost: number;
  readonly #choice: SheetChoice;

  /** @param atMost the cost to keep to, by the measure of the objective */
  constructor(
    ground: SearchGround,
    weights: readonly number[],
    atMost: number,
    random: () => number,
  ) {
    this.#ground = ground;
    this.#weights = weights;
    this.#atMost = atMost;
    this.#choice = new SheetChoice(random);
  }

  /** True once all sheets were freed at a time and their best answer found. */
  get exhausted(): boolean {
    return this.#choice.exhausted;
  }

  async step(partial: Partial): Promise<Partial> {
    const { rest, freed } = this.#choice.choose(partial.planned);
    const { shaken } = this.#choice;
    const again = await refillRest(this.#ground, rest, this.#weights, this.#atMost, freed, shaken);
    this.#choice.learn(again?.best === true);
    return again !== undefined && again.missing <= partial.missing ? again : partial;
  }
}

/**
 * One step of local search on the cost of a whole plan: frees some sheets, and
 * cuts their pieces again for as little as can be.
 * @returns the plan as it was where nothing as cheap came of it
 */
export async function cutAgain(
  ground: SearchGround,
  planned: readonly Planned[],
  choice: SheetChoice,
): Promise<readonly Planned[]> {
  const { rest, freed } = choice.choose(planned);
  const { objective, classes } = ground;
  const cost = objective.cost ?? money;
  const now = spentOn(ground, planned, cost) - spentOn(ground, rest, cost);
  const caps = objective.caps.map((cap) => ({
    ...cap,
    atMost: cap.atMost - spentOn(ground, rest, cap.measure),
  }));
  const used = sheetsUsed(rest, classes.length);
  const added = await cover(ground, {
    demand: demandLeft(ground.demand, rest),
    classes: classes.map((entry, g) => without(entry, used[g])),
    caps: [...caps, { measure: cost, atMost: now }],
    weights: undefined,
    seeds: freed,
    nodes: NODES_EACH,
    shaken: choice.shaken,
  });
  choice.learn(added?.best === true);
  return added === undefined ? planned : [...rest, ...added.planned];
}

/** Which sheets to free: more at a time where that is solved with ease. */
export class SheetChoice {
  readonly #random: () => number;
  #freed = FREED_FIRST;
  #all = false;
  #exhausted = 0;

  constructor(random: () => number) {
    this.#random = random;
  }

  /** True once all sheets were freed often, and their best answer found each time. */
  get exhausted(): boolean {
    return this.#exhausted >= TIMES_ALL;
  }

  /** Where all sheets are freed, only other patterns can make a difference. */
  get shaken(): (() => number) | undefined {
    return this.#all ? this.#random : undefined;
  }

  choose(planned: readonly Planned[]): {
    readonly rest: readonly Planned[];
    readonly freed: readonly Planned['pattern'][];
  } {
    const wanted = Math.round(this.#freed);
    const sheets = planned.flatMap(({ pattern, count }) =>
      new Array<Planned['pattern']>(Math.min(count, wanted)).fill(pattern),
    );
    const freed: Planned['pattern'][] = [];
    while (freed.length < wanted && sheets.length > 0) {
      freed.push(...sheets.splice(Math.floor(this.#random() * sheets.length), 1));
    }
    this.#all = sheets.length === 0;
    return { rest: withoutSheets(planned, freed), freed };
  }

  /** @param solved whether the best answer for the sheets last chosen was found */
  learn(solved: boolean): void {
    if (solved && this.#all) this.#exhausted++;
    this.#freed = solved
      ? Math.min(this.#freed + MORE_EACH_TIME, MOST_FREED)
      : Math.max(FEWEST_FREED, this.#freed - 1);
  }
}

function spentOn(ground: SearchGround, planned: readonly Planned[], measure: Measure): number {
  const used = sheetsUsed(planned, ground.classes.length);
  return totalCost(ground.classes, used, measure) - measure.coin * keptCoins(planned);
}

/** Cuts what a plan lacks as well as a cost allows. */
export async function refillRest(
  ground: SearchGround,
  rest: readonly Planned[],
  weights: readonly number[],
  atMost: number,
  seeds: readonly Planned['pattern'][],
  shaken?: () => number,
): Promise<(Partial & { readonly best: boolean }) | undefined> {
  const { objective, classes } = ground;
  const used = sheetsUsed(rest, classes.length);
  const spent = (measure: Measure) => spentOn(ground, rest, measure);
  const caps = objective.caps.map((cap) => ({ ...cap, atMost: cap.atMost - spent(cap.measure) }));
  if (objective.cost !== undefined) {
    caps.push({ measure: objective.cost, atMost: atMost - spent(objective.cost) });
  }
  const demand = demandLeft(ground.demand, rest);
  const added = await cover(ground, {
    demand,
    classes: classes.map((entry, g) => without(entry, used[g])),
    caps,
    weights,
    seeds,
    nodes: NODES_EACH,
    shaken,
  });
  if (added === undefined) return undefined;
  const planned = [...rest, ...added.planned];
  return { planned, missing: missingWeight(ground.demand, planned, weights), best: added.best };
}

export function missingWeight(
  demand: readonly number[],
  planned: readonly Planned[],
  weights: readonly number[],
): number {
  return demandLeft(demand, planned).reduce(
    (sum, quantity, piece) => sum + quantity * weights[piece],
    0,
  );
}

function withoutSheets(
  planned: readonly Planned[],
  freed: readonly Planned['pattern'][],
): readonly Planned[] {
  return planned.flatMap(({ pattern, count }) => {
    const left = count - freed.filter((other) => other === pattern).length;
    return left > 0 ? [{ pattern, count: left }] : [];
  });
}
