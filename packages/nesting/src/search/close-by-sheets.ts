import type { BandMaster } from '../master/band-master.js';
import { boundAt, solveLinear } from '../master/column-generation.js';
import { coinWorth, type ExactBound } from '../master/exact-bound.js';
import { classCost, type Measure } from '../master/objective.js';
import { SheetBySheetMaster } from '../master/sheet-by-sheet-master.js';
import type { StockClass } from '../master/stock-class.js';
import { FEW_SHEETS, type PricedStrips, type StripLister } from '../pattern/strip-lister.js';
import type { SupplyNode } from './branch-on-supplies.js';
import { available } from './class-supplies.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';

/** Strips of one master at most, those of every sheet counted. */
const MOST_STRIPS = 6_000;
/** Rounds of pricing at most before strips are listed. */
const ROUNDS = 60;
/** Nodes of branching that it may take, and its share of the time left. */
const NODES = 20_000;
const SHARE_OF_TIME = 0.5;

/**
 * Raises the bound of ranges of the supplies, or finds the best plan within them. What a
 * pattern may fall short of the best leaves few strips where a plan is to cost little more
 * than the bound; an integer master over all of them, sheet by sheet, says what plans they
 * make, or that there is none. Plans that it finds are offered.
 * @param master of the whole problem; its supplies are set to the node's
 * @param next a bound above which it is of no use
 * @returns what no plan within the ranges costs less than, in units of 1/scale; `Infinity`
 *   where none is better than the best so far
 */
export async function closeBySheets(
  ground: SearchGround,
  incumbent: Incumbent,
  master: BandMaster,
  node: SupplyNode,
  next: number,
): Promise<number> {
  const { scale, effort, deadline } = ground;
  const { classes, scaled } = node;
  const lister = ground.stripLister();
  if (
    lister === undefined ||
    sheetsWithin(ground, incumbent.measure, classes, scaled / scale) === undefined
  ) {
    return scaled;
  }
  const priced = await priceStrips(ground, lister, master, node, incumbent.target);
  if (priced === undefined) return scaled;
  const sure = Math.ceil(priced.bound.scaled / scale);
  let least = Math.max(sure, Math.ceil(scaled / scale));
  while (deadline.left() > 0 && least * scale <= next) {
    // What was ruled out so far, ruled out once more each time; or less, where that is too much.
    let atMost = Math.min(incumbent.target, 2 * least - sure);
    if (atMost < least) return Number.POSITIVE_INFINITY;
    let whole = masterOf(ground, incumbent, classes, priced, atMost);
    while (whole === undefined && atMost > least) {
      atMost = Math.floor((least + atMost) / 2);
      whole = masterOf(ground, incumbent, classes, priced, atMost);
    }
    if (whole === undefined) break;
    effort.integerMasters++;
    const { status, cost, sheets } = await whole.solve(deadline.left() * SHARE_OF_TIME, NODES);
    const patterns = sheets?.map(({ face, strips }) => lister.pattern(face, strips)) ?? [];
    const planned = patterns.flatMap((pattern) =>
      pattern === undefined ? [] : [{ pattern, count: 1 }],
    );
    if (planned.length === patterns.length) incumbent.offer(planned);
    if (status === 'stopped') break;
    // The master keeps to the cost that its strips are listed for: of others it tells nothing.
    const optimal = status === 'optimal' && cost !== undefined;
    least = Math.max(least, optimal ? Math.round(cost) : atMost + 1);
    // A plan that comes out dearer than the master said proves no more than that.
    if (optimal) break;
  }
  return Math.max(scaled, least * scale);
}

/** What the strips of a node are worth at its multipliers, and the bound there. */
interface NodePrices {
  readonly bound: ExactBound;
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
  const { within } = lister.price(
    bound.multipliers.pieces,
    coinWorth(objective, bound.multipliers),
  );
  return { bound, within };
}

/** The integer master of plans that cost so much; undefined where it would be too large. */
function masterOf(
  ground: SearchGround,
  { measure }: Incumbent,
  classes: readonly StockClass[],
  { bound, within }: NodePrices,
  atMost: number,
): SheetBySheetMaster | undefined {
  const { demand, engines, scale, limits } = ground;
  const sheets = sheetsWithin(ground, measure, classes, atMost);
  if (sheets === undefined) return undefined;
  const total = sheets.reduce((sum, count) => sum + count, 0);
  const gap = atMost * scale - bound.scaled;
  const faces = within(bound.classCost, gap, MOST_STRIPS / Math.max(1, total));
  if (faces === undefined) return undefined;
  const { kerf, narrowest } = limits;
  const slivers = narrowest > 1;
  const request = { classes, demand, measure, faces, atMost, sheets, kerf, slivers, engines };
  return new SheetBySheetMaster(request);
}

/** How many sheets of each class a plan may take that costs so much; undefined where too many. */
function sheetsWithin(
  { demand, keptAtMost }: SearchGround,
  measure: Measure,
  classes: readonly StockClass[],
  atMost: number,
): readonly number[] | undefined {
  const wanted = demand.reduce((sum, quantity) => sum + quantity, 0);
  /** What so many sheets of a class cost at least, whatever is kept of them. */
  const costs = (g: number, count: number) =>
    classCost(classes[g], count, measure) - count * measure.coin * keptAtMost[g];
  const least = classes.map((entry, g) => Math.max(0, costs(g, leastOf(entry))));
  const all = least.reduce((sum, cost) => sum + cost, 0);
  const sheets = classes.map((entry, g) => {
    const most = Math.min(wanted, available(entry), FEW_SHEETS + 1);
    let count = 0;
    while (count < most && costs(g, count + 1) + all - least[g] <= atMost) count++;
    return count;
  });
  return sheets.reduce((sum, count) => sum + count, 0) > FEW_SHEETS ? undefined : sheets;
}

/** Sheets of a class that a node takes at least; those of packs, or where supplies mix, are not looked at. */
function leastOf({ supplies }: StockClass): number {
  return supplies.length === 1 && supplies[0].unit === 1 ? supplies[0].least : 0;
}
