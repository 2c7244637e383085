import { BandMaster } from '../master/band-master.js';
import { boundAt, solveLinear } from '../master/column-generation.js';
import { exactScale } from '../master/exact-bound.js';
import type { Measure } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import { SupplyBranches, type SupplyNode } from './branch-on-supplies.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { solveWhole } from './whole-master.js';

/** Patterns of one node at most, and nodes that their integer master may take. */
const MOST_PATTERNS = 4_000;
const NODES = 100;
/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.1;

/**
 * Tries to prove that no plan is cheaper than the best so far: that none keeps to the cost
 * next below, where the linear plan leaves room for hardly any spare piece. A plan loses no
 * more than that room, which few patterns do; for each number of sheets that comes up to the
 * cost, an integer master over all of them says whether they make a plan. Plans that it
 * finds are offered.
 *
 * That room, and not money, is what the multipliers must tell: with whole numbers of sheets
 * the cost is what it is, whatever is cut from them.
 * @param losses for each piece, what going without one counts, 1 on average
 * @returns whether it is proven
 */
export async function ruleOutCost(
  ground: SearchGround,
  incumbent: Incumbent,
  losses: readonly number[],
): Promise<boolean> {
  const { demand, engines, classes } = ground;
  const cap = { measure: incumbent.measure, atMost: incumbent.target };
  const objective = { cost: undefined, caps: [...ground.objective.caps, cap] };
  const book = ground.newBook();
  book.adopt(ground.book, [...ground.book.bands.keys()], [...ground.book.sheets.keys()]);
  const spare = demand.map(() => 1);
  const penalties = losses;
  const master = new BandMaster({ demand, classes, objective, penalties, spare, book, engines });
  // No multiplier of a piece is more than what going without it counts.
  const most = demand.reduce((sum, quantity, piece) => sum + quantity * losses[piece], 0);
  const scale = exactScale(2 * most);
  const room = { ...ground, objective, book, scale };
  // A plan costs nothing here, so that none is left once the bound is above that.
  const none = (scaled: number) => scaled > 0;
  try {
    const root = await solveLinear({ ...room, master, enough: none });
    const scaled = await new SupplyBranches(classes, root).raise({
      ground: room,
      master,
      enough: none,
      raised: async (node) =>
        (await noPlanAt(node, room, incumbent)) ? Number.POSITIVE_INFINITY : node.scaled,
    });
    return none(scaled);
  } finally {
    master.close();
  }
}

async function noPlanAt(
  { classes, plan }: SupplyNode,
  ground: SearchGround,
  incumbent: Incumbent,
): Promise<boolean> {
  if (ground.objective.caps.some((cap) => leastOf(classes, cap.measure) > cap.atMost)) return true;
  const duals = plan.answer?.duals;
  if (duals === undefined) return false;
  // Not the best bound of the node, which worthless pieces would make: its multipliers tell nothing.
  const { multipliers, classCost, scaled } = boundAt({ ...ground, classes }, duals).bound;
  const list = ground.pricer.within?.(multipliers.pieces, classCost, -scaled, MOST_PATTERNS);
  if (list === undefined || ground.deadline.left() <= 0) return false;
  const book = ground.newBook();
  book.addList(list);
  const seconds = ground.deadline.left() * SHARE_OF_TIME;
  const { status, planned } = await solveWhole(
    { ...ground, classes, book },
    undefined,
    seconds,
    NODES,
  );
  incumbent.offer(planned);
  return status === 'infeasible';
}

/** What the supplies cost that must be paid for, whatever is cut from them. */
function leastOf(classes: readonly StockClass[], { of, coin }: Measure): number {
  return classes
    .flatMap(({ supplies }) => supplies)
    .reduce((sum, supply) => sum + (of(supply) - coin * supply.leftOver) * supply.least, 0);
}
