import { type Measure, money, totalCost } from '../master/objective.js';
import type { Pattern } from '../pattern/part.js';
import { without } from './class-supplies.js';
import { cover } from './cover.js';
import { coverBySettling, type LikelyPatterns } from './cover-by-settling.js';
import type { SearchGround } from './ground.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './planned.js';
import { SheetChoice } from './sheet-choice.js';

/** A plan that keeps to a cost but may leave pieces uncut. */
export interface Partial {
  readonly planned: readonly Planned[];
  /** Weight of the pieces it leaves uncut. */
  readonly missing: number;
}

/** What a local search knows from the linear plan. */
export interface RefillGuide {
  /** What each missing piece counts. */
  readonly weights: readonly number[];
  /** The same in the measure of the objective, dear enough that nothing is left uncut for want of trying. */
  readonly losses: readonly number[];
  readonly likely: LikelyPatterns;
  /** What a sheet costs beyond the worth of its pieces. */
  readonly waste: (pattern: Pattern) => number;
}

/** Nodes that one integer master may take. */
const NODES_EACH = 40;
/** How fast a success fades, and what means keep however long they had none. */
const FADING = 0.9;
const LEAST_CREDIT = 0.3;
/** The fewest and the most sheets that are cut again by settling bands. */
const FEWEST_SETTLED = 4;
const MOST_SETTLED = 14;

/**
 * Local search on a plan that keeps to a cost: each step frees some sheets, and
 * cuts their pieces and the missing ones again as well as the same money allows;
 * by turns a few by the integer master alone, and more by settling bands.
 */
export class Refiller {
  readonly #ground: SearchGround;
  readonly #guide: RefillGuide;
  readonly #atMost: number;
  readonly #choice: SheetChoice;
  readonly #random: () => number;
  /** What the master alone, and settling bands, have lately been good for. */
  readonly #credit: [number, number] = [1, 1];

  /** @param atMost the cost to keep to, by the measure of the objective */
  constructor(ground: SearchGround, guide: RefillGuide, atMost: number, random: () => number) {
    this.#ground = ground;
    this.#guide = guide;
    this.#atMost = atMost;
    this.#random = random;
    this.#choice = new SheetChoice(random, guide.waste);
  }

  /** True once all sheets were freed at a time and their best answer found. */
  get exhausted(): boolean {
    return this.#choice.exhausted;
  }

  async step(partial: Partial): Promise<Partial> {
    const means = this.#random() * (this.#credit[0] + this.#credit[1]) < this.#credit[0] ? 0 : 1;
    const again = means === 0 ? await this.#master(partial) : await this.#settle(partial);
    const better = again !== undefined && again.missing < partial.missing;
    this.#credit[means] = Math.max(LEAST_CREDIT, this.#credit[means] * FADING) + Number(better);
    return again !== undefined && again.missing <= partial.missing ? again : partial;
  }

  async #master(partial: Partial): Promise<Partial | undefined> {
    const { rest, freed } = this.#choice.choose(partial.planned);
    const again = await refillRest(this.#ground, this.#guide, rest, this.#atMost, {
      seeds: freed,
      shaken: this.#choice.shaken,
      cutoff: partial.missing,
    });
    this.#choice.learn(again.best);
    return again;
  }

  /** Undefined where there are too few sheets for it. */
  async #settle(partial: Partial): Promise<Partial | undefined> {
    const wanted =
      FEWEST_SETTLED + Math.floor((MOST_SETTLED - FEWEST_SETTLED + 1) * this.#random());
    const { rest, freed } = this.#choice.chooseSome(partial.planned, wanted);
    if (freed.length < FEWEST_SETTLED) return undefined;
    return refillBySettling(this.#ground, this.#guide, rest, this.#atMost, this.#random, {
      seeds: freed,
      cutoff: partial.missing,
    });
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
  const used = sheetsUsed(rest, classes.length);
  const added = await cover(ground, {
    demand: demandLeft(ground.demand, rest),
    classes: classes.map((entry, g) => without(entry, used[g])),
    caps: [...capsLeft(ground, rest), { measure: cost, atMost: now }],
    weights: undefined,
    seeds: freed,
    cutoff: undefined,
    nodes: NODES_EACH,
    shaken: choice.shaken,
  });
  choice.learn(added.best);
  return added.planned === undefined ? planned : [...rest, ...added.planned];
}

interface AgainRequest {
  readonly seeds: readonly Pattern[];
  readonly cutoff: number | undefined;
}

/** Cuts what a plan lacks as well as a cost allows, by the integer master. */
export async function refillRest(
  ground: SearchGround,
  { weights }: Pick<RefillGuide, 'weights'>,
  rest: readonly Planned[],
  atMost: number,
  again: AgainRequest & { readonly shaken?: (() => number) | undefined },
): Promise<Partial & { readonly best: boolean }> {
  const request = requestFor(ground, rest, atMost);
  const covered = await cover(ground, { ...request, ...again, weights, nodes: NODES_EACH });
  return { ...joined(ground, weights, rest, covered.planned), best: covered.best };
}

/** Cuts what a plan lacks as well as a cost allows, by settling bands one after another. */
export async function refillBySettling(
  ground: SearchGround,
  { weights, losses, likely }: RefillGuide,
  rest: readonly Planned[],
  atMost: number,
  random: () => number,
  again: AgainRequest,
): Promise<Partial | undefined> {
  const request = requestFor(ground, rest, atMost);
  const covered = await coverBySettling(ground, {
    ...request,
    ...again,
    weights,
    losses,
    likely,
    random,
  });
  return covered && joined(ground, weights, rest, covered.planned);
}

function requestFor(ground: SearchGround, rest: readonly Planned[], atMost: number) {
  const { objective, classes } = ground;
  const used = sheetsUsed(rest, classes.length);
  const { cost } = objective;
  return {
    demand: demandLeft(ground.demand, rest),
    classes: classes.map((entry, g) => without(entry, used[g])),
    caps: [
      ...capsLeft(ground, rest),
      ...(cost === undefined
        ? []
        : [{ measure: cost, atMost: atMost - spentOn(ground, rest, cost) }]),
    ],
  };
}

/** What the sheets of a plan leave of the objective's caps. */
function capsLeft(ground: SearchGround, planned: readonly Planned[]) {
  return ground.objective.caps.map((cap) => ({
    ...cap,
    atMost: cap.atMost - spentOn(ground, planned, cap.measure),
  }));
}

function joined(
  ground: SearchGround,
  weights: readonly number[],
  rest: readonly Planned[],
  added: readonly Planned[] | undefined,
): Partial {
  if (added === undefined) return { planned: rest, missing: Number.POSITIVE_INFINITY };
  const planned = [...rest, ...added];
  return { planned, missing: missingWeight(ground.demand, planned, weights) };
}

function spentOn(ground: SearchGround, planned: readonly Planned[], measure: Measure): number {
  const used = sheetsUsed(planned, ground.classes.length);
  return totalCost(ground.classes, used, measure) - measure.coin * keptCoins(planned);
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
