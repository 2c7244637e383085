import { type Measure, totalCost } from '../master/objective.js';
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
/** Most sheets that are freed at a time. */
const MOST_FREED = 30;
/** Nodes that one integer master may take. */
const NODES_EACH = (globalThis as any).NODES ?? 300;

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
  readonly #random: () => number;
  #freed = FREED_FIRST;
  #exhausted = false;

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
    this.#random = random;
  }

  /** True once all sheets were freed at a time and their best answer found. */
  get exhausted(): boolean {
    return this.#exhausted;
  }

  async step(partial: Partial): Promise<Partial> {
    const most = Math.ceil(this.#freed);
    const sheets = partial.planned.flatMap(({ pattern, count }) =>
      new Array<Planned['pattern']>(Math.min(count, most)).fill(pattern),
    );
    const freed: Planned['pattern'][] = [];
    while (freed.length < Math.round(this.#freed) && sheets.length > 0) {
      const [pattern] = sheets.splice(Math.floor(this.#random() * sheets.length), 1);
      freed.push(pattern);
    }
    const rest = withoutSheets(partial.planned, freed);
    const again = await refillRest(this.#ground, rest, this.#weights, this.#atMost, freed);
    if (again?.best === true && sheets.length === 0) this.#exhausted = true;
    if (again?.best === true) this.#freed = Math.min(this.#freed + 0.25, MOST_FREED);
    else this.#freed = Math.max(FEWEST_FREED, this.#freed - 0.5);
    return again !== undefined && again.missing <= partial.missing ? again : partial;
  }
}

/** Cuts what a plan lacks as well as a cost allows. */
export async function refillRest(
  ground: SearchGround,
  rest: readonly Planned[],
  weights: readonly number[],
  atMost: number,
  seeds: readonly Planned['pattern'][],
): Promise<(Partial & { readonly best: boolean }) | undefined> {
  const { objective, classes } = ground;
  const used = sheetsUsed(rest, classes.length);
  const spent = (measure: Measure) =>
    totalCost(classes, used, measure) - measure.coin * keptCoins(rest);
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
