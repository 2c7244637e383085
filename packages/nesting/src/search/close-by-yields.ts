import type { BandMaster } from '../master/band-master.js';
import { boundAt, solveLinear } from '../master/column-generation.js';
import { coinWorth, type ExactBound } from '../master/exact-bound.js';
import { classCost, type Measure } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { PricedStrips, StripLister } from '../pattern/strip-lister.js';
import type { SupplyNode } from './branch-on-supplies.js';
import { type CheapestSum, cheapestSum } from './cheapest-sum.js';
import { available } from './class-supplies.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { PieceNumbers } from './piece-numbers.js';
import { sheetYields } from './sheet-yields.js';

/** Strips of all classes that are put together to sheets. */
const MOST_STRIPS = 20_000;
/** Steps of putting strips together, and of putting sheets together. */
const MOST_STEPS = 100_000_000;
/** Sheets of one class at most. */
const MOST_SHEETS = 24;
/** Rounds of pricing at most before strips are listed. */
const ROUNDS = 60;

/**
 * Raises the bound of ranges of the supplies, or finds the best plan within them. A plan that
 * costs little more than the bound is made of sheets that lose little: all that any sheet can
 * yield so is listed, and looked through for sheets that together yield what is wanted. Plans
 * that it finds are offered.
 * @param master of the whole problem; its supplies are set to the node's
 * @param next a bound above which it is of no use
 * @returns what no plan within the ranges costs less than, in units of 1/scale; `Infinity`
 *   where none is better than the best so far
 */
export async function closeByYields(
  ground: SearchGround,
  incumbent: Incumbent,
  master: BandMaster,
  node: SupplyNode,
  next: number,
): Promise<number> {
  const { scale, deadline } = ground;
  const lister = ground.stripLister();
  const priced = lister && (await priceStrips(ground, lister, master, node, incumbent.target));
  if (lister === undefined || priced === undefined) return node.scaled;
  const sure = Math.ceil(priced.bound.scaled / scale);
  let least = Math.max(sure, Math.ceil(node.scaled / scale));
  while (deadline.left() > 0 && least * scale <= next) {
    // What was ruled out so far, ruled out once more each time; or less, where that is too much.
    let atMost = Math.min(incumbent.target, 2 * least - sure);
    if (atMost < least) return Number.POSITIVE_INFINITY;
    let found = cheapest(ground, incumbent, node.classes, priced, atMost);
    while (found === undefined && atMost > least && deadline.left() > 0) {
      atMost = Math.floor((least + atMost) / 2);
      found = cheapest(ground, incumbent, node.classes, priced, atMost);
    }
    if (found === undefined) break;
    ground.effort.nodes++;
    if (found === 'none') {
      least = atMost + 1;
      continue;
    }
    const patterns = found.yields.map(({ face, strips }) => lister.pattern(face, strips));
    const planned = patterns.flatMap((pattern) =>
      pattern === undefined ? [] : [{ pattern, count: 1 }],
    );
    if (planned.length === patterns.length) incumbent.offer(planned);
    // A plan that comes out dearer than its yields said proves no more than that.
    least = Math.max(least, found.cost);
    break;
  }
  return Math.max(node.scaled, least * scale);
}

/** What the strips of a node are worth at its multipliers, and the bound there. */
interface NodePrices {
  readonly bound: ExactBound;
  /** What a coin is worth in units of the multipliers. */
  readonly coin: number;
  readonly within: PricedStrips['within'];
}

/** @returns undefined where there is no linear plan in time */
async function priceStrips(
  ground: SearchGround,
  lister: StripLister,
  master: BandMaster,
  { classes }: SupplyNode,
  target: number,
): Promise<NodePrices | undefined> {
  const { objective, scale, effort } = ground;
  master.setSupplies(classes);
  const own = { ...ground, classes, pricer: lister };
  const enough = (value: number) => value > target * scale;
  const { answer, rounds } = await solveLinear({ ...own, master, mostRounds: ROUNDS, enough });
  effort.rounds += rounds;
  if (answer?.duals === undefined) return undefined;
  const { bound } = boundAt(own, answer.duals);
  // Values may have been scaled down for the bound.
  const coin = coinWorth(objective, bound.multipliers);
  const { within } = lister.price(bound.multipliers.pieces, coin);
  return { bound, coin, within };
}

/**
 * The least that a plan costs within the ranges, if that is at most so much, and its sheets.
 * @returns undefined where there is too much to look through
 */
function cheapest(
  { demand, scale, keptAtMost, limits }: SearchGround,
  { measure }: Incumbent,
  stock: readonly StockClass[],
  { bound, coin, within }: NodePrices,
  atMost: number,
): (CheapestSum & { readonly cost: number }) | 'none' | undefined {
  const numbers = new PieceNumbers(demand);
  const { classCost: best, multipliers } = bound;
  const sheets = sheetsWithin(stock, measure, keptAtMost, atMost);
  if (sheets.some((count) => count > MOST_SHEETS)) return undefined;
  const counts = stock.map((entry, g) => {
    const least = leastOf(entry);
    const costs = (count: number) => scale * classCost(entry, count, measure) - count * best[g];
    let sure = Number.POSITIVE_INFINITY;
    for (let count = least; count <= sheets[g]; count++) sure = Math.min(sure, costs(count));
    return { least, most: sheets[g], sure, lossOf: (count: number) => costs(count) - sure };
  });
  const base =
    demand.reduce((sum, quantity, piece) => sum + quantity * multipliers.pieces[piece], 0) +
    counts.reduce((sum, { sure }) => sum + sure, 0);
  const gap = atMost * scale - base;
  if (gap < 0) return 'none';
  const faces = within(best, gap, MOST_STRIPS);
  if (faces === undefined) return undefined;
  const budget = { steps: MOST_STEPS };
  const classes = [];
  for (const [g, count] of counts.entries()) {
    const own = count.most > 0 ? faces.filter(({ box }) => box === g) : [];
    const request = { faces: own, demand, numbers, values: multipliers.pieces, coin };
    const yields = sheetYields({ ...request, best: best[g], gap, limits, budget });
    if (yields === undefined) return undefined;
    classes.push({ ...count, yields });
  }
  const sum = cheapestSum(classes, numbers, gap, { steps: MOST_STEPS });
  if (sum === undefined || sum === 'none') return sum;
  return { ...sum, cost: Math.round((base + sum.loss) / scale) };
}

/** How many sheets of each class a plan may take that costs so much. */
function sheetsWithin(
  stock: readonly StockClass[],
  measure: Measure,
  keptAtMost: readonly number[],
  atMost: number,
): readonly number[] {
  /** What so many sheets of a class cost at least, whatever is kept of them. */
  const costs = (g: number, count: number) =>
    classCost(stock[g], count, measure) - count * measure.coin * keptAtMost[g];
  const least = stock.map((entry, g) => Math.max(0, costs(g, leastOf(entry))));
  const all = least.reduce((sum, cost) => sum + cost, 0);
  return stock.map((entry, g) => {
    const most = Math.min(MOST_SHEETS + 1, available(entry));
    let count = 0;
    while (count < most && costs(g, count + 1) + all - least[g] <= atMost) count++;
    return count;
  });
}

/** Sheets of a class that a node takes at least; those of packs, or where supplies mix, are not looked at. */
function leastOf({ supplies }: StockClass): number {
  return supplies.length === 1 && supplies[0].unit === 1 ? supplies[0].least : 0;
}
