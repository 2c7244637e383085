import { everyPattern } from '../enumeration/every-pattern.js';
import { stockClasses } from '../master/stock-class.js';
import { cuttingRules } from '../pattern/cutting-rules.js';
import { keptValue } from '../pattern/kept-value.js';
import type { CuttingProblem } from '../problem.js';
import { StripLists } from './strip-lists.js';

/** More than there are in any small problem. */
const MOST = 1e5;

/** Every pattern of a small problem, how much it falls short of the best, and what is listed. */
export function listedPatterns(problem: CuttingProblem, values: readonly number[], gap: number) {
  const rules = cuttingRules(problem);
  const { limits } = rules;
  const [rule] = problem.keep ?? [];
  const keep = (length: number, width: number) => keptValue(length, width, rule);
  const classes = stockClasses(problem, limits, keep);
  const boxes = classes.map(({ box }) => box);
  const demand = problem.pieces.map(({ quantity }) => quantity);
  const all = everyPattern(
    boxes.map((box) => ({ ...box, keep: rule })),
    demand,
    rules,
    () => false,
  );
  const lister = new StripLists(boxes, demand, limits, keep);
  const priced = lister.price(values, 1);
  const faces = priced.within(priced.worth, gap, MOST) ?? [];
  const patterns = (all ?? []).map((pattern) => {
    const { counts, kept, stockClass } = pattern;
    const worth = counts.reduce((sum, [piece, copies]) => sum + values[piece] * copies, kept);
    return { pattern, short: priced.worth[stockClass] - worth };
  });
  return { boxes, demand, limits, lister, worth: priced.worth, faces, patterns };
}
