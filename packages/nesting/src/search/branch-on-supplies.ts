import type { BandMaster } from '../master/band-master.js';
import { closerBound, type LinearResult, solveLinear } from '../master/column-generation.js';
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

/** A node that waits to be looked into. */
interface OpenNode extends SupplyNode {
  /** Whether its bound is as close as can be had. */
  readonly close: boolean;
}

/** Most nodes that are looked into. */
const MOST_NODES = 400;
/** A number of packs this close to a whole one is taken for whole. */
const WHOLE = 1e-5;

/** What is asked of branching. */
export interface BranchRequest {
  readonly ground: SearchGround;
  /** Of the whole problem; it is set back to it. */
  readonly master: BandMaster;
  /** True once a bound in units of 1/scale is as good as the caller can use. */
  readonly enough: (scaled: number) => boolean;
  /** Whether only what is bought is branched on; all that costs something where absent. */
  readonly onlyBought?: boolean;
  /**
   * A higher bound of a node whose supplies are whole and whose sheets that are bought are settled,
   * `Infinity` where it has no plan which is of use, or else its own; it is told the bound of the next
   * node, above which it is of less use. Absent where that is not looked into.
   */
  readonly raised?: ((node: SupplyNode, next: number) => Promise<number>) | undefined;
}

/**
 * Raises the lower bound by branching on how many of each supply are used: one
 * branch uses at most the whole number of packs below what the linear plan takes,
 * the other at least the one above. With few sizes of sheet this closes most of
 * the gap that is due to sheets coming whole. The node of the lowest bound goes
 * first, so that the bound of the next node always holds for all. Where the caller knows how to
 * raise a node, sheets of which the linear plan takes a whole number are branched on too:
 * its branches take that very number, fewer, and more.
 */
export class SupplyBranches {
  readonly #open: OpenNode[];

  /** @param root the linear plan without branching, bounded as closely as can be */
  constructor(classes: readonly StockClass[], root: LinearResult) {
    this.#open = [{ classes, scaled: root.bound.scaled, plan: root, close: true }];
  }

  /**
   * Goes on from where it was left.
   * @returns what no plan of use costs less than, in units of 1/scale; `Infinity` where there is none
   */
  async raise(request: BranchRequest): Promise<number> {
    const { ground, master, enough, raised } = request;
    try {
      for (let nodes = 1; ; ) {
        this.#open.sort((a, b) => b.scaled - a.scaled);
        const node = this.#open.at(-1);
        if (node === undefined) return Number.POSITIVE_INFINITY;
        if (enough(node.scaled) || nodes >= MOST_NODES || ground.deadline.left() <= 0) {
          return node.scaled;
        }
        if (!node.close) {
          this.#open.pop();
          this.#open.push(closely(ground, node));
          continue;
        }
        const changes =
          brokenSupply(request, node) ??
          (raised === undefined ? undefined : openSupply(ground, node));
        if (changes === undefined) {
          const next = this.#open.at(-2)?.scaled ?? Number.POSITIVE_INFINITY;
          const scaled = (await raised?.(node, next)) ?? node.scaled;
          if (scaled <= node.scaled) return node.scaled;
          this.#open.pop();
          if (scaled < Number.POSITIVE_INFINITY) this.#open.push({ ...node, scaled });
          continue;
        }
        this.#open.pop();
        for (const change of changes) {
          this.#open.push(await branch(request, node, change));
          nodes++;
        }
      }
    } finally {
      master.setSupplies(ground.classes);
    }
  }
}

/** What a branch changes of a supply. */
interface SupplyChange {
  readonly stockClass: number;
  readonly supply: number;
  readonly least?: number;
  readonly count?: number;
}

async function branch(
  { ground, master, enough, raised }: BranchRequest,
  node: SupplyNode,
  change: SupplyChange,
): Promise<OpenNode> {
  const classes = withSupply(node.classes, change);
  master.setSupplies(classes);
  const quicker = raised === undefined ? [] : ground.inTurn.slice(0, -1);
  for (const pricer of quicker) {
    const first = { ...ground, pricer, enough: () => false };
    ground.effort.rounds += (await solveLinear({ ...first, classes, master })).rounds;
  }
  const plan = await solveLinear({ ...ground, classes, master, enough });
  ground.effort.nodes++;
  ground.effort.rounds += plan.rounds;
  return { classes, scaled: Math.max(node.scaled, plan.bound.scaled), plan, close: false };
}

/** The node of the lowest bound only is worth the time that a closer one takes. */
function closely(ground: SearchGround, node: OpenNode): OpenNode {
  const { scaled } = closerBound({ ...ground, classes: node.classes }, node.plan);
  return { ...node, scaled: Math.max(node.scaled, scaled), close: true };
}

/**
 * The branches of the broken supply whose branches will differ most in cost. Supplies that
 * cost nothing need no branch: taking all of a part costs no more.
 */
function brokenSupply(
  { ground: { objective }, onlyBought = false }: BranchRequest,
  { classes, plan }: SupplyNode,
): readonly SupplyChange[] | undefined {
  const { of } = objective.cost ?? money;
  let best: { readonly changes: readonly SupplyChange[]; readonly score: number } | undefined;
  plan.answer?.supplies.forEach((values, stockClass) => {
    values.forEach((value, index) => {
      const supply = classes[stockClass].supplies[index];
      const { unit, bought } = supply;
      if (onlyBought && !bought) return;
      const below = Math.floor(value / unit + WHOLE) * unit;
      const part = Math.min(value - below, below + unit - value);
      const score = part * of(supply);
      if (part <= WHOLE || score <= (best?.score ?? 0)) return;
      const at = { stockClass, supply: index };
      best = {
        changes: [
          { ...at, count: below },
          { ...at, least: below + unit },
        ],
        score,
      };
    });
  });
  return best?.changes;
}

/** The branches of the dearest supply that is bought and not settled yet, though its number is whole. */
function openSupply(
  { objective }: SearchGround,
  { classes, plan }: SupplyNode,
): readonly SupplyChange[] | undefined {
  const { of } = objective.cost ?? money;
  let best: { readonly changes: readonly SupplyChange[]; readonly price: number } | undefined;
  plan.answer?.supplies.forEach((values, stockClass) => {
    values.forEach((value, index) => {
      const supply = classes[stockClass].supplies[index];
      const { unit, least, count, bought } = supply;
      const price = of(supply);
      if (!bought || least === count || price <= (best?.price ?? 0)) return;
      const taken = Math.round(value / unit) * unit;
      const at = { stockClass, supply: index };
      const changes: SupplyChange[] = [{ ...at, least: taken, count: taken }];
      if (taken > least) changes.push({ ...at, count: taken - unit });
      if (taken < count) changes.push({ ...at, least: taken + unit });
      best = { changes, price };
    });
  });
  return best?.changes;
}

function withSupply(
  classes: readonly StockClass[],
  { stockClass, supply, ...change }: SupplyChange,
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
