import type { Deadline } from './deadline.js';
import { everyPattern } from './enumeration/every-pattern.js';
import { kindPricers } from './kind-pricers.js';
import { BandBook } from './master/band-book.js';
import { exactScale } from './master/exact-bound.js';
import type { Objective } from './master/objective.js';
import { aboveEveryPlan, shortagePenalties } from './master/shortage.js';
import type { StockClass } from './master/stock-class.js';
import type { Box } from './pattern/box.js';
import type { CuttingRules, FillBox } from './pattern/cutting-rules.js';
import { coinsPerTick, keptValue } from './pattern/kept-value.js';
import { patternOf } from './pattern/pattern-of.js';
import type { KeepRule } from './problem.js';
import { firstFit } from './search/first-fit.js';
import type { Effort, SearchGround } from './search/ground.js';
import type { Planned } from './search/planned.js';
import type { Engines } from './solvers/engine-choice.js';
import { proper, withoutSurplus } from './without-surplus.js';

export interface MetalGroundsRequest {
  readonly classes: readonly StockClass[];
  /** One for each class; remnants are kept by the rule there. */
  readonly boxes: readonly (FillBox & Box)[];
  readonly demand: readonly number[];
  readonly rules: CuttingRules;
  /** What remnants are worth; undefined where nothing. */
  readonly worth: KeepRule | undefined;
  readonly engines: Engines;
  readonly effort: Effort;
  /** Whether there is no time left. */
  readonly over: () => boolean;
}

/** What the searches for one metal work with, for one objective or another. */
export class MetalGrounds {
  readonly #request: MetalGroundsRequest;
  readonly #shared: Pick<
    SearchGround,
    | 'keptAtMost'
    | 'keptPerTick'
    | 'book'
    | 'newBook'
    | 'pricer'
    | 'inTurn'
    | 'rough'
    | 'pricerFor'
    | 'stripLister'
    | 'firstFit'
    | 'bare'
    | 'proper'
  >;

  constructor(request: MetalGroundsRequest) {
    this.#request = request;
    const { classes, boxes, demand, rules, worth } = request;
    const { limits } = rules;
    const keep =
      worth === undefined
        ? undefined
        : (length: number, width: number) => keptValue(length, width, worth);
    const own = classes.map(({ box }) => box);
    const {
      exact: pricer,
      inTurn,
      rough,
      quick: pricerFor,
      thorough,
      strips,
    } = kindPricers(rules.stages, {
      boxes: own,
      demand,
      limits,
      rule: worth,
      keep,
      over: request.over,
    });
    const newBook = () =>
      new BandBook(
        own,
        limits,
        keep === undefined
          ? undefined
          : (part, length, width) => patternOf(part, 0, { length, width, keep: worth }, rules).kept,
      );
    this.#shared = {
      keptAtMost: own.map(({ length, width }) =>
        keep === undefined ? 0 : keep(length - limits.kerf, width - limits.kerf),
      ),
      keptPerTick: worth === undefined ? 0 : coinsPerTick(worth),
      book: newBook(),
      newBook,
      pricer,
      inTurn,
      rough: rough && {
        pricer: rough.pricer,
        newBook: () => new BandBook(own, limits, rough.keptBeside),
        whole: rough.whole,
      },
      pricerFor,
      stripLister: strips,
      firstFit: (wanted, stock) => firstFit(stock, boxes, wanted, rules, thorough, request.over),
      // Strips of two stages hold no more of a piece than is wanted, each by itself.
      proper: (pattern, wanted) =>
        rules.stages === 2 && keep === undefined ? pattern : proper(pattern, wanted, boxes, rules),
      // Remnants are then worth the more.
      bare:
        keep === undefined ? undefined : (planned) => withoutSurplus(planned, demand, boxes, rules),
    };
  }

  get book(): BandBook {
    return this.#shared.book;
  }

  /** A plan by the rule of thumb; undefined where the stock is not enough for that. */
  get start(): readonly Planned[] | undefined {
    const { demand, classes } = this.#request;
    return this.#shared.firstFit(demand, classes);
  }

  /** @param others see the ground's */
  for(
    objective: Objective,
    deadline: Deadline,
    others: Partial<Pick<SearchGround, 'withoutValue' | 'inTwoStages'>> = {},
  ): SearchGround {
    const { classes, boxes, demand, rules, engines, effort } = this.#request;
    const penalties = shortagePenalties(classes, demand, objective);
    const most =
      demand.reduce((sum, quantity, i) => sum + quantity * penalties[i], 0) +
      aboveEveryPlan(classes, demand, objective);
    return {
      ...this.#shared,
      classes,
      demand,
      objective,
      penalties,
      scale: exactScale(most),
      limits: rules.limits,
      withoutValue: others.withoutValue,
      inTwoStages: others.inTwoStages,
      everyPattern: (over) => everyPattern(boxes, demand, rules, over),
      engines,
      deadline,
      effort,
    };
  }
}
