import type { BandAnswer, BandMaster } from '../master/band-master.js';
import { type LinearResult, solveLinear } from '../master/column-generation.js';
import type { StockClass } from '../master/stock-class.js';
import type { SearchGround } from './ground.js';

interface Node {
  readonly classes: readonly StockClass[];
  readonly scaled: number;
  readonly supplies: BandAnswer['supplies'];
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
 * @returns what no plan costs less than, in units of 1/scale
 */
export async function branchOnSupplies(
  ground: SearchGround,
  master: BandMaster,
  root: LinearResult,
  enough: (scaled: number) => boolean,
): Promise<number> {
  const open: Node[] = [
    {
      classes: ground.classes,
      scaled: root.bound.scaled,
      supplies: root.answer?.supplies ?? [],
    },
  ];
  try {
    for (let nodes = 1; ; nodes += 2) {
      open.sort((a, b) => b.scaled - a.scaled);
      const node = open.pop();
      if (node === undefined) return Number.POSITIVE_INFINITY;
      const split = enough(node.scaled) ? undefined : fractionalSupply(ground, node);
      if (split === undefined || nodes >= MOST_NODES || ground.deadline.left() <= 0) {
        return node.scaled;
      }
      for (const change of [{ count: split.below }, { least: split.below + split.unit }]) {
        const classes = withSupply(node.classes, split.stockClass, split.supply, change);
        master.setSupplies(classes);
        const result = await solveLinear({ ...ground, classes, master, enough });
        ground.effort.nodes++;
        ground.effort.rounds += result.rounds;
        const scaled = Math.max(node.scaled, result.bound.scaled);
        open.push({ classes, scaled, supplies: result.answer?.supplies ?? [] });
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
  node: Node,
): { stockClass: number; supply: number; below: number; unit: number } | undefined {
  let best:
    | { stockClass: number; supply: number; below: number; unit: number; score: number }
    | undefined;
  node.supplies.forEach((values, stockClass) => {
    values.forEach((value, index) => {
      const supply = node.classes[stockClass].supplies[index];
      const { unit } = supply;
      const below = Math.floor(value / unit + WHOLE) * unit;
      const part = Math.min(value - below, below + unit - value);
      const score = part * (objective.cost?.of(supply) ?? 0);
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
