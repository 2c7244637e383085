import type { StockClass } from '../stock-classes.js';
import { type LinearRequest, type LinearResult, solveLinear } from './column-generation.js';
import type { CutPattern } from './patterns.js';

export interface BranchingResult {
  /** No plan costs less than this, in units of 1/scale. */
  readonly scaled: number;
  /** The patterns of the request and all that were generated on the way. */
  readonly cuts: readonly CutPattern[];
  readonly nodes: number;
  readonly rounds: number;
}

interface Node {
  readonly classes: readonly StockClass[];
  readonly scaled: number;
  readonly supplies: LinearResult['supplies'];
}

/** Most nodes that are looked into. */
const MOST_NODES = 400;
/** A number of sheets this close to a whole one is taken for whole. */
const WHOLE = 1e-5;

/**
 * Raises the lower bound by branching on how many of each supply are used: one
 * branch uses at most the whole number below what the linear plan takes, the
 * other at least the one above. With few sizes of sheet this closes most of the
 * gap that is due to sheets coming whole. The node of the lowest bound goes
 * first, so that the bound of the next node always holds for all.
 * @param root the linear plan without branching
 */
export async function branchOnSupplies(
  request: LinearRequest,
  root: LinearResult,
): Promise<BranchingResult> {
  const open: Node[] = [
    { classes: request.classes, scaled: root.bound.scaled, supplies: root.supplies },
  ];
  let cuts = root.patterns;
  let nodes = 1;
  let rounds = 0;
  for (;;) {
    open.sort((a, b) => b.scaled - a.scaled);
    const node = open.pop();
    if (node === undefined) return { scaled: Number.POSITIVE_INFINITY, cuts, nodes, rounds };
    const split = request.enough(node.scaled) ? undefined : fractionalSupply(request, node);
    if (split === undefined || nodes >= MOST_NODES || request.deadline.left() <= 0) {
      return { scaled: node.scaled, cuts, nodes, rounds };
    }
    for (const change of [{ count: split.below }, { least: split.below + 1 }]) {
      const classes = withSupply(node.classes, split.stockClass, split.supply, change);
      const result = await solveLinear({ ...request, classes, start: cuts });
      nodes++;
      rounds += result.rounds;
      cuts = result.patterns;
      open.push({
        classes,
        scaled: Math.max(node.scaled, result.bound.scaled),
        supplies: result.supplies,
      });
    }
  }
}

/**
 * The supply whose branches will differ most in cost. Supplies that cost nothing
 * need no branch: taking all of a part costs no more.
 */
function fractionalSupply(
  request: LinearRequest,
  node: Node,
): { stockClass: number; supply: number; below: number } | undefined {
  let best: { stockClass: number; supply: number; below: number; score: number } | undefined;
  node.supplies.forEach((values, stockClass) => {
    values.forEach((value, supply) => {
      const below = Math.floor(value + WHOLE);
      const part = Math.min(value - below, below + 1 - value);
      const score = part * request.objective.cost(node.classes[stockClass].supplies[supply]);
      if (part <= WHOLE || score <= (best?.score ?? 0)) return;
      best = { stockClass, supply, below, score };
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
