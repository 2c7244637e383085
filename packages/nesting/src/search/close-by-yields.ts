import type { BandMaster } from '../master/band-master.js';
import { classCost, type Measure } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { StripLister } from '../pattern/strip-lister.js';
import type { SupplyNode } from './branch-on-supplies.js';
import { type CheapestSum, cheapestSum } from './cheapest-sum.js';
import { available } from './class-supplies.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { PieceNumbers } from './piece-numbers.js';
import { sheetYields } from './sheet-yields.js';
import { Steps } from './steps.js';
import { moneyPrices, roomPrices, type YieldPrices } from './yield-prices.js';

/** How far it is looked: a little way by all means, then far by all of them. */
const LOOKS = [
  { strips: 8_000, steps: 10_000_000, tries: 2 },
  { strips: 20_000, steps: 60_000_000, tries: 3 },
] as const;
/** Sheets of one class at most. */
const MOST_SHEETS = 48;

/** What is closed, and with what. */
interface Closing {
  readonly ground: SearchGround;
  readonly incumbent: Incumbent;
  readonly lister: StripLister;
  readonly classes: readonly StockClass[];
  /** Strips of all classes that are put together to sheets. */
  readonly strips: number;
  /** Steps of putting strips together, and of putting sheets together. */
  readonly steps: number;
  /** Tries to look through ever less, where it was too much. */
  readonly tries: number;
}

/**
 * Raises the bound of ranges of the supplies, or finds the best plan within them. A plan that
 * costs little more than the bound is made of sheets that lose little: all that any sheet can
 * yield so is listed, and looked through for sheets that together yield what is wanted. Plans
 * that it finds are offered.
 * @param master of the whole problem; its supplies are set to the node's
 * @param next a bound above which it is of no use
 * @param ways to weigh what is lost, each tried in turn
 * @returns what no plan within the ranges costs less than, in units of 1/scale; `Infinity`
 *   where none is better than the best so far
 */
export async function closeByYields(
  ground: SearchGround,
  incumbent: Incumbent,
  master: BandMaster,
  { classes, scaled }: SupplyNode,
  next: number,
  ways: readonly Way[] = [byMoney, byRoom],
): Promise<number> {
  const { scale, deadline } = ground;
  const lister = ground.stripLister();
  if (lister === undefined) return scaled;
  let least = Math.ceil(scaled / scale);
  for (const look of LOOKS) {
    const closing = { ground, incumbent, lister, classes, ...look };
    for (const way of ways) {
      if (deadline.left() <= 0) break;
      least = await way(closing, master, least, next / scale);
      if (least > next / scale) return least * scale;
    }
  }
  return Math.max(scaled, least * scale);
}

/**
 * One way to weigh what sheets lose.
 * @param least coins that no plan costs less than
 * @param next coins above which it is of no use
 * @returns the same, or more; as much as the best plan where that is found, `Infinity` where none
 *   is better than the best so far
 */
type Way = (closing: Closing, master: BandMaster, least: number, next: number) => Promise<number>;

/** Raises the bound step by step, by multipliers that count money. */
const byMoney: Way = async (closing, master, least, next) => {
  const { ground, incumbent, lister, classes, tries } = closing;
  const priced = await moneyPrices(ground, lister, master, classes, incumbent.target);
  if (priced === undefined) return least;
  const first = Math.ceil(priced.scaled / ground.scale);
  let sure = Math.max(first, least);
  for (let vain = 0; vain < tries && sure <= next && ground.deadline.left() > 0; ) {
    // What was ruled out so far, ruled out once more each time; or less, where that is too much.
    const span = Math.floor((sure - first) / 2 ** vain);
    const atMost = Math.min(incumbent.target, sure + span);
    if (atMost < sure) return Number.POSITIVE_INFINITY;
    const found = cheapest(closing, priced.prices, atMost);
    if (found === 'none') sure = atMost + 1;
    if (typeof found === 'object') return offered(closing, found, sure);
    if (found === undefined && span === 0) break;
    vain = found === undefined ? vain + 1 : 0;
  }
  return sure;
};

/** Looks for all that is left below the best plan so far, by multipliers that count room. */
export const byRoom: Way = async (closing, _, least) => {
  const { ground, incumbent, lister, classes, tries } = closing;
  let sure = least;
  /** So many coins are too much to look through. */
  let tooMuch = Number.POSITIVE_INFINITY;
  for (let vain = 0; vain < tries && ground.deadline.left() > 0; ) {
    const { target } = incumbent;
    if (target < sure) return Number.POSITIVE_INFINITY;
    const atMost = tooMuch <= target ? Math.floor((sure + tooMuch) / 2) : target;
    if (atMost >= tooMuch) break;
    const prices = await roomPrices(ground, lister, incumbent.measure, classes, atMost);
    if (prices === undefined) break;
    const found = prices === 'none' ? prices : cheapest(closing, prices, atMost);
    if (found === 'none') {
      sure = atMost + 1;
    } else if (found === undefined) {
      tooMuch = atMost;
      vain++;
    } else {
      const cost = offered(closing, found, sure);
      // Where coins count nothing, another plan may cost less; one that could not be made is of no help.
      if (found.cost !== undefined || incumbent.target >= atMost) return cost;
    }
  }
  return sure;
};

/** Offers a plan. @returns what no plan of the node costs less than */
function offered({ lister, incumbent }: Closing, found: Cheapest, least: number): number {
  const patterns = found.yields.map(({ face, strips }) => lister.pattern(face, strips));
  const planned = patterns.flatMap((pattern) =>
    pattern === undefined ? [] : [{ pattern, count: 1 }],
  );
  if (planned.length === patterns.length) incumbent.offer(planned);
  // A plan that comes out dearer than its yields said proves no more than that.
  return Math.max(least, found.cost ?? least);
}

interface Cheapest extends CheapestSum {
  /** Coins; undefined where they count nothing. */
  readonly cost: number | undefined;
}

/**
 * The least that a plan costs within the ranges, if that is at most so much, and its sheets.
 * @returns undefined where there is too much to look through
 */
function cheapest(
  { ground, incumbent, classes: stock, ...look }: Closing,
  { values, coin, best, within }: YieldPrices,
  atMost: number,
): Cheapest | 'none' | undefined {
  const { demand, keptAtMost, limits } = ground;
  const { measure } = incumbent;
  const numbers = new PieceNumbers(demand);
  const sheets = sheetsWithin(stock, measure, keptAtMost, atMost);
  if (sheets.some((count) => count > MOST_SHEETS)) return undefined;
  const counts = stock.map((entry, g) => {
    const least = leastOf(entry);
    const costs = (count: number) => coin * classCost(entry, count, measure) - count * best[g];
    let sure = Number.POSITIVE_INFINITY;
    for (let count = least; count <= sheets[g]; count++) sure = Math.min(sure, costs(count));
    return { least, most: sheets[g], sure, lossOf: (count: number) => costs(count) - sure };
  });
  const base =
    demand.reduce((sum, quantity, piece) => sum + quantity * values[piece], 0) +
    counts.reduce((sum, { sure }) => sum + sure, 0);
  const gap = atMost * coin - base;
  if (gap < 0) return 'none';
  const faces = within(best, gap, look.strips);
  if (faces === undefined) return undefined;
  const steps = new Steps(look.steps, ground.deadline);
  const classes = [];
  for (const [g, count] of counts.entries()) {
    const own = count.most > 0 ? faces.filter(({ box }) => box === g) : [];
    const request = { faces: own, demand, numbers, values, coin, best: best[g], gap, limits };
    const yields = sheetYields({ ...request, steps });
    if (yields === undefined) return undefined;
    classes.push({ ...count, yields });
  }
  const sum = cheapestSum(classes, numbers, gap, new Steps(look.steps, ground.deadline));
  if (sum === undefined || sum === 'none') return sum;
  return { ...sum, cost: coin > 0 ? Math.round((base + sum.loss) / coin) : undefined };
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
