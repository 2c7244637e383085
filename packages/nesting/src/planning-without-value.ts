import { type Deadline, shareOf } from './deadline.js';
import type { Multipliers } from './master/exact-bound.js';
import { leastMoney, money, totalCost } from './master/objective.js';
import { type StockClass, stockClasses } from './master/stock-class.js';
import { MetalGrounds } from './metal-grounds.js';
import { cuttingRules } from './pattern/cutting-rules.js';
import { coinsPerTick, keptValue } from './pattern/kept-value.js';
import type { CuttingProblem, KeepRule, Piece } from './problem.js';
import type { Effort, PlansWithoutValue } from './search/ground.js';
import { type Planned, sheetsUsed } from './search/planned.js';
import { search } from './search/search.js';
import type { Engines } from './solvers/engine-choice.js';
import { withoutSurplus } from './without-surplus.js';

export interface WithoutValueRequest {
  /** Pieces and stock of one metal and thickness. */
  readonly problem: CuttingProblem;
  /** What remnants are worth. */
  readonly worth: KeepRule;
  readonly engines: Engines;
  readonly effort: Effort;
  /** Whether there is no time left. */
  readonly over: () => boolean;
  readonly seed: number;
}

/** The sides of a remnant, in ticks. */
type Size = Pick<Piece, 'length' | 'width'>;

/** Share of the time left that one size of a remnant is tried for, so that there is some for the others. */
const SHARE_OF_SIZE = 0.5;

/** Plans for one metal made as if offcuts and remnants were worth nothing. */
export class PlanningWithoutValue implements PlansWithoutValue {
  readonly #request: WithoutValueRequest;
  /** The way in which the last remnant lay that was found. */
  #lastWay = 0;

  constructor(request: WithoutValueRequest) {
    this.#request = request;
  }

  async plan(
    until: Deadline,
    tell: (better?: readonly Planned[]) => void,
  ): Promise<Multipliers | undefined> {
    const { problem, seed } = this.#request;
    const { grounds } = this.#grounds(problem);
    const ground = grounds.for(leastMoney, until);
    const known = grounds.start;
    const own = { brief: false, seed, onProgress: () => tell(), onBetter: tell };
    const { multipliers } = await search({ ground, known, ...own });
    return multipliers;
  }

  async leaving(
    coins: number,
    planned: readonly Planned[],
    until: Deadline,
  ): Promise<readonly Planned[] | undefined> {
    const late = ({ way }: { readonly way: number }) => Number(way !== this.#lastWay);
    const ways = [...this.#ways(coins, planned)].sort((a, b) => late(a) - late(b));
    for (const { way, size } of ways) {
      if (until.left() <= 0) return undefined;
      const found = await this.#beside(size, planned, shareOf(until, SHARE_OF_SIZE));
      if (found === undefined) continue;
      this.#lastWay = way;
      return found;
    }
    return undefined;
  }

  /** Remnants worth so many coins that go from edge to edge of a sheet that the plan buys. */
  #ways(
    coins: number,
    planned: readonly Planned[],
  ): readonly { readonly way: number; readonly size: Size }[] {
    const { problem, worth } = this.#request;
    const { kerf = 0 } = problem.shear;
    const classes = this.#classes(problem);
    const used = sheetsUsed(planned, classes.length);
    const sides = classes.flatMap(({ box, supplies }, g) => {
      const bought = used[g] > 0 && supplies.some((supply) => supply.bought);
      const [length, width] = [box.length - kerf, box.width - kerf];
      return bought ? [[length, width] as const, [width, length] as const] : [];
    });
    return sides.flatMap(([length, most], way) => {
      const area = (coins + (worth.trouble ?? 0)) / coinsPerTick(worth);
      const width = Math.max(worth.leastWidth, Math.ceil(area / length));
      // Rounding may take a coin.
      const wide = [width, width + 1].find((w) => keptValue(length, w, worth) >= coins);
      return wide === undefined || wide >= most ? [] : [{ way, size: { length, width: wide } }];
    });
  }

  /** A plan for the money of another which has room for such a remnant, as if that were a piece. */
  async #beside(
    size: Size,
    planned: readonly Planned[],
    until: Deadline,
  ): Promise<readonly Planned[] | undefined> {
    const { problem, seed, worth } = this.#request;
    const remnant: Piece = { ...metalOf(problem), ...size, id: '', quantity: 1, mayTurn: true };
    const pieces = [...problem.pieces.map((piece) => ({ ...piece, spares: 0 })), remnant];
    const { grounds, classes, rules } = this.#grounds({ ...problem, pieces });
    const atMost = totalCost(classes, sheetsUsed(planned, classes.length), money);
    let found: readonly Planned[] | undefined;
    const ground = grounds.for(leastMoney, {
      left: () => (found === undefined ? until.left() : 0),
    });
    await search({
      ground,
      known: undefined,
      atMost,
      brief: false,
      seed,
      onBetter: (better) => {
        found = better;
      },
    });
    const boxes = classes.map(({ box }) => ({ ...box, keep: worth }));
    const demand = problem.pieces.map(({ quantity }) => quantity);
    return found && withoutSurplus(found, [...demand, 0], boxes, rules);
  }

  #grounds(problem: CuttingProblem) {
    const { engines, effort, over } = this.#request;
    const rules = cuttingRules(problem);
    const classes = this.#classes(problem);
    const boxes = classes.map(({ box }) => ({ ...box, keep: undefined }));
    const demand = problem.pieces.map(({ quantity }) => quantity);
    const own = { classes, boxes, demand, rules, engines, effort, over };
    return { grounds: new MetalGrounds({ ...own, worth: undefined }), classes, rules };
  }

  #classes(problem: CuttingProblem): readonly StockClass[] {
    const { worth } = this.#request;
    const value = (length: number, width: number) => keptValue(length, width, worth);
    return stockClasses(problem, cuttingRules(problem).limits, value).map((entry) =>
      freeOffcuts(entry, problem),
    );
  }
}

/** The same stock, but offcuts cost nothing. */
function freeOffcuts(entry: StockClass, { stock }: CuttingProblem): StockClass {
  const isOffcut = (id: string) => stock.some((item) => item.id === id && item.kind === 'offcut');
  const supplies = entry.supplies.map((supply) =>
    isOffcut(supply.stock) ? { ...supply, price: 0 } : supply,
  );
  return { ...entry, supplies };
}

/** The one metal of a problem. */
function metalOf({ pieces: [piece] }: CuttingProblem) {
  const { metal, thickness } = piece;
  return {
    ...(metal === undefined ? {} : { metal }),
    ...(thickness === undefined ? {} : { thickness }),
  };
}
