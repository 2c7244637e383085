import type { Deadline } from '../deadline.js';
import { everyPattern } from '../enumeration/every-pattern.js';
import { kindPricers } from '../kind-pricers.js';
import { BandBook } from '../master/band-book.js';
import { exactScale } from '../master/exact-bound.js';
import { leastMoney, type Objective } from '../master/objective.js';
import { aboveEveryPlan, shortagePenalties } from '../master/shortage.js';
import { stockClasses } from '../master/stock-class.js';
import { cuttingRules } from '../pattern/cutting-rules.js';
import { coinsPerTick, keptValue } from '../pattern/kept-value.js';
import type { Pattern } from '../pattern/part.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { CuttingProblem } from '../problem.js';
import { type Engines, standardEngines } from '../solvers/engine-choice.js';
import { firstFit } from './first-fit.js';
import type { SearchGround } from './ground.js';
import type { Planned } from './planned.js';

const ENDLESS: Deadline = { left: () => 1e6 };

/** What a search of a problem of one metal works with, as `planOneMetal` sets it up. */
export function groundOf(
  problem: CuttingProblem,
  objective: Objective = leastMoney,
  engines: Engines = standardEngines,
) {
  const rules = cuttingRules(problem);
  const { limits } = rules;
  const [rule] = problem.keep ?? [];
  const value = (length: number, width: number) => keptValue(length, width, rule);
  const keep = rule === undefined ? undefined : value;
  const classes = stockClasses(problem, limits, value);
  const boxes = classes.map(({ box }) => ({ ...box, keep: rule }));
  const demand = problem.pieces.map(({ quantity }) => quantity);
  const pricers = kindPricers(rules.stages, {
    boxes: classes.map(({ box }) => box),
    demand,
    limits,
    rule,
    keep,
    over: () => false,
  });
  const { rough } = pricers;
  const newBook = () =>
    new BandBook(
      classes.map(({ box }) => box),
      limits,
      keep === undefined
        ? undefined
        : (part, length, width) => patternOf(part, 0, { length, width, keep: rule }, rules).kept,
    );
  const penalties = shortagePenalties(classes, demand, objective);
  const most =
    demand.reduce((sum, quantity, i) => sum + quantity * penalties[i], 0) +
    aboveEveryPlan(classes, demand, objective);
  const set = {
    classes,
    demand,
    objective,
    penalties,
    keptAtMost: classes.map(({ box }) => value(box.length - limits.kerf, box.width - limits.kerf)),
    keptPerTick: rule === undefined ? 0 : coinsPerTick(rule),
    scale: exactScale(most),
    limits,
    book: newBook(),
    newBook,
    pricer: pricers.exact,
    inTurn: pricers.inTurn,
    rough: rough && {
      pricer: rough.pricer,
      whole: rough.whole,
      newBook: () =>
        new BandBook(
          classes.map(({ box }) => box),
          limits,
          rough.keptBeside,
        ),
    },
    pricerFor: pricers.quick,
    engines,
    deadline: ENDLESS,
    effort: { rounds: 0, integerMasters: 0, nodes: 0 },
    proper: (pattern: Pattern) => pattern,
    bare: undefined,
    withoutValue: undefined,
    inTwoStages: undefined,
    stripLister: pricers.strips,
    everyPattern: (over: () => boolean) => everyPattern(boxes, demand, rules, over),
    firstFit: (wanted: readonly number[], stock: typeof classes) =>
      firstFit(stock, boxes, wanted, rules, pricers.thorough, () => false),
  };
  const ground: SearchGround = set;
  const start: readonly Planned[] | undefined = firstFit(
    classes,
    boxes,
    demand,
    rules,
    pricers.thorough,
    () => false,
  );
  return { ground: { ...set, ...ground }, boxes, rules, start };
}
