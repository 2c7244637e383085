/**
 * The bound of the linear plan alone, by column generation over all patterns of a
 * kind, without any search for a plan. It reaches into the package, since the
 * planner has no such switch.
 */
import { deadlineIn } from '../dist/deadline.js';
import { kindPricers } from '../dist/kind-pricers.js';
import { BandBook } from '../dist/master/band-book.js';
import { BandMaster } from '../dist/master/band-master.js';
import { solveLinear } from '../dist/master/column-generation.js';
import { exactScale } from '../dist/master/exact-bound.js';
import { leastMoney } from '../dist/master/objective.js';
import { aboveEveryPlan, shortagePenalties } from '../dist/master/shortage.js';
import { stockClasses } from '../dist/master/stock-class.js';
import { cuttingRules } from '../dist/pattern/cutting-rules.js';
import { standardEngines } from '../dist/solvers/engine-choice.js';
import { sum, timed } from './harness.js';

/**
 * @param problem without a rule for keeping offcuts, every price 1
 * @param limit seconds
 */
export async function rootBound(problem, limit) {
  const { result, ...time } = await timed(() => solveRoot(problem, limit));
  const { root, scale, patterns, rounds } = result;
  const exact = root.bound.scaled / scale;
  return { exact, bound: Math.ceil(exact), patterns, rounds, finished: root.finished, ...time };
}

async function solveRoot(problem, limit) {
  const { limits, stages } = cuttingRules(problem);
  const classes = stockClasses(problem, limits, () => 0);
  const boxes = classes.map(({ box }) => box);
  const demand = problem.pieces.map(({ quantity }) => quantity);
  const objective = leastMoney;
  const penalties = shortagePenalties(classes, demand, objective);
  const most =
    sum(demand.map((quantity, piece) => quantity * penalties[piece])) +
    aboveEveryPlan(classes, demand, objective);
  const scale = exactScale(most);
  const { exact, quick } = kindPricers(stages, {
    boxes,
    demand,
    limits,
    rule: undefined,
    keep: undefined,
  });
  const book = new BandBook(boxes, limits);
  const master = new BandMaster({
    classes,
    demand,
    objective,
    penalties,
    book,
    engines: standardEngines,
  });
  const request = {
    classes,
    demand,
    objective,
    keptAtMost: classes.map(() => 0),
    scale,
    book,
    master,
    proper: (pattern) => pattern,
    enough: () => false,
    deadline: deadlineIn(limit, () => performance.now()),
  };
  try {
    // Quick patterns first, as the search does.
    const first = quick(demand);
    const before = first === exact ? 0 : (await solveLinear({ ...request, pricer: first })).rounds;
    const root = await solveLinear({ ...request, pricer: exact });
    const patterns = book.bands.length + book.sheets.length;
    return { root, scale, patterns, rounds: before + root.rounds };
  } finally {
    master.close();
  }
}
