import type { Deadline } from '../deadline.js';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import type { StockClass } from '../master/stock-class.js';
import { SupplyBranches, type SupplyNode } from './branch-on-supplies.js';
import type { RoughGround, SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';

/** What is searched, and its linear master. */
interface Searched {
  readonly ground: SearchGround;
  readonly master: BandMaster;
}

/** Patterns of a single piece that are known from the start, at most. */
const MOST_SINGLE = 5_000;

/**
 * Raises the bound by branching on supplies where patterns of the kind take long to price: the linear plans
 * are made of rough patterns, which none of the kind can better. Only where the node of the lowest bound is
 * settled is it looked at by all patterns of the kind.
 */
export class RoughBranches {
  readonly #rough: RoughGround;
  readonly #incumbent: Incumbent;
  /** Of the whole problem, over patterns of the kind. */
  readonly #all: Searched;
  /** The same over rough patterns, once it was begun. */
  #begun: Searched | undefined;
  #branches: SupplyBranches | undefined;
  /** Branches by all patterns of the kind, by the supplies of a node that was looked at. */
  readonly #solvedBefore = new WeakMap<readonly StockClass[], SupplyBranches>();

  /** @param master of the whole problem, over patterns of the kind */
  constructor(ground: SearchGround, rough: RoughGround, incumbent: Incumbent, master: BandMaster) {
    this.#all = { ground, master };
    this.#rough = rough;
    this.#incumbent = incumbent;
  }

  close(): void {
    this.#begun?.master.close();
  }

  /**
   * Goes on from where it was left.
   * @param closely whether settled nodes are looked at by all patterns of the kind
   * @returns as `SupplyBranches` does
   */
  async raise(deadline: Deadline, closely: boolean): Promise<number> {
    this.#begun ??= begin(this.#all.ground, this.#rough);
    const { master } = this.#begun;
    const ground = { ...this.#begun.ground, deadline };
    const enough = (scaled: number) => this.#incumbent.wouldMeet(scaled);
    if (this.#branches === undefined) {
      const root = await solveLinear({ ...ground, master, enough });
      ground.effort.rounds += root.rounds;
      if (!root.finished) return root.bound.scaled;
      this.#branches = new SupplyBranches(ground.classes, root);
    }
    const raised = async (node: SupplyNode, next: number) =>
      closely ? this.#solved(node, next, deadline) : node.scaled;
    // Offcuts cost so little that all patterns of the kind tell more than branching on them.
    return this.#branches.raise({ ground, master, enough, onlyBought: true, raised });
  }

  /** The bound of a node by all patterns of the kind, or what is enough to look at the next instead. */
  async #solved(
    { classes, scaled }: SupplyNode,
    next: number,
    deadline: Deadline,
  ): Promise<number> {
    const { master } = this.#all;
    const ground = { ...this.#all.ground, deadline };
    const enough = (bound: number) => bound > next || this.#incumbent.wouldMeet(bound);
    const branches =
      this.#solvedBefore.get(classes) ?? (await this.#branchesOf(classes, ground, enough));
    return Math.max(scaled, await branches.raise({ ground, master, enough }));
  }

  /** Branches of a node, begun with its linear plan over all patterns of the kind. */
  async #branchesOf(
    classes: readonly StockClass[],
    ground: SearchGround,
    enough: (scaled: number) => boolean,
  ): Promise<SupplyBranches> {
    const { master } = this.#all;
    const { effort, inTurn } = ground;
    master.setSupplies(classes);
    for (const pricer of inTurn.slice(0, -1)) {
      const quick = { ...ground, pricer, classes, master, enough: () => false };
      effort.rounds += (await solveLinear(quick)).rounds;
    }
    const plan = await solveLinear({ ...ground, classes, master, enough });
    effort.rounds += plan.rounds;
    const branches = new SupplyBranches(classes, plan);
    // Where a bound was enough for now, the linear plan may still rise.
    if (plan.finished && !enough(plan.bound.scaled)) this.#solvedBefore.set(classes, branches);
    return branches;
  }
}

/** The same ground with rough patterns instead of those of the kind. */
function begin(ground: SearchGround, { pricer, newBook, whole }: RoughGround): Searched {
  const book = newBook();
  // Where more sheets must be taken than the pieces need, some are hardly cut.
  const bought = ground.classes.map(({ supplies }) => supplies.some((supply) => supply.bought));
  const single = ground.classes.flatMap(({ box }, stockClass) =>
    bought[stockClass] ? box.lays.map((lay) => ({ stockClass, lay })) : [],
  );
  for (const { stockClass, lay } of single.length > MOST_SINGLE ? [] : single) {
    const { piece, turned } = lay;
    book.addPattern(whole(stockClass, { kind: 'lay', piece, turned }));
  }
  const rough: SearchGround = {
    ...ground,
    pricer,
    inTurn: [pricer],
    pricerFor: () => pricer,
    book,
    newBook,
    // Rough patterns cannot be cut as they are, so that nothing can be taken out of them either.
    proper: (pattern) => pattern,
  };
  return { ground: rough, master: new BandMaster(rough) };
}
