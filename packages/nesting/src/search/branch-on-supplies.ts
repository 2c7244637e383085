import type { BandMaster } from '../master/band-master.js';
import { type LinearResult, solveLinear } from '../master/column-generation.js';
import { money } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';

/** Ranges of the supplies, and the linear plan within them. */
export interface SupplyNode {
  readonly classes: readonly StockClass[];
  readonly plan: LinearResult;
  /** No plan within them costs less, in units of 1/scale; that of a node above where it is higher. */
  readonly scaled: number;
}

/** Most nodes that are looked into. */
const MOST_NODES = 400;
/** A number of packs this close to a whole one is taken for whole. */
const WHOLE = 1e-5;

/**
 * Raises the lower bound by branching on how many of each supply are used: one
 * branch uses at most the whole number of packs below what the linear plan takes,
 * the other at least the one above. With few sizes of sheet this closes most of
 * the gap that is due to sheets coming whole. The node of the lowest bound goes
 * first, so that the bound of the next node always holds for all.
 * @param master of the whole problem; it is set back to it
 * @param root the linear plan without branching
 * @param raised a higher bound of a node that cannot be branched any further, `Infinity` where
 *   it has no plan which is of use, or else its own; it is told the bound of the next node, above
 *   which it is of less use. Absent where that is not looked into
 * @returns what no plan of use costs less than, in units of 1/scale; `Infinity` where there is none
 */
export async function branchOnSupplies(
  ground: SearchGround,
  master: BandMaster,
  root: LinearResult,
  enough: (scaled: number) => boolean,
  raised?: (node: SupplyNode, next: number) => Promise<number>,
): Promise<number> {
  const open: SupplyNode[] = [{ classes: ground.classes, scaled: root.bound.scaled, plan: root }];
  try {
    for (let nodes = 1; ; nodes += 2) {
      open.sort((a, b) => b.scaled - a.scaled);
      const node = open.pop();
      if (node === undefined) return Number.POSITIVE_INFINITY;
      if (enough(node.scaled) || nodes >= MOST_NODES || ground.deadline.left() <= 0) {
        return node.scaled;
      }
      const split = fractionalSupply(ground, node);
      if (split === undefined) {
        const scaled =
          (await raised?.(node, open.at(-1)?.scaled ?? Number.POSITIVE_INFINITY)) ?? node.scaled;
        if (scaled <= node.scaled) return node.scaled;
        if (scaled < Number.POSITIVE_INFINITY) open.push({ ...node, scaled });
        continue;
      }
      for (const change of [{ count: split.below }, { least: split.below + split.unit }]) {
        const classes = withSupply(node.classes, split.stockClass, split.supply, change);
        master.setSupplies(classes);
        const quick = ground.pricerFor(ground.demand);
        if (raised !== undefined && quick !== ground.pricer) {
          const first = { ...ground, pricer: quick, enough: () => false };
          ground.effort.rounds += (await solveLinear({ ...first, classes, master })).rounds;
        }
        const plan = await solveLinear({ ...ground, classes, master, enough });
        ground.effort.nodes++;
        ground.effort.rounds += plan.rounds;
        open.push({ classes, scaled: Math.max(node.scaled, plan.bound.scaled), plan });
      }
    }
  } finally {
    master.setSupplies(ground.classes);
  }
}

/**
 * The supply whose branches will differ most in cost. Supplies that cost nothing
 * need no branch: taking all of a part costs no more.
 */
function fractionalSupply(
  { objective }: SearchGround,
  node: SupplyNode,
): { stockClass: number; supply: number; below: number; unit: number } | undefined {
  let best:
    | { stockClass: number; supply: number; below: number; unit: number; score: number }
    | undefined;
  const { of } = objective.cost ?? money;
  node.plan.answer?.supplies.forEach((values, stockClass) => {
    values.forEach((value, index) => {
      const supply = node.classes[stockClass].supplies[index];
      const { unit } = supply;
      const below = Math.floor(value / unit + WHOLE) * unit;
      const part = Math.min(value - below, below + unit - value);
      const score = part * of(supply);
      if (part <= WHOLE || score <= (best?.score ?? 0)) return;
      best = { stockClass, supply: index, below, unit, score };
    });
  });
  return best;
}

function withSupply(
  classes: readonly StockClass[],
  stockClass: number,
  supply: number,
  change: { readonly count: number } | { readonly least: number },
): readonly StockClass[] {
  return classes.map((entry, g) =>
    g === stockClass
      ? {
          ...entry,
          supplies: entry.supplies.map((item, t) => (t === supply ? { ...item, ...change } : item)),
        }
      : entry,
  );
}
