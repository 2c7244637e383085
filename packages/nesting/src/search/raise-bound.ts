import { shareOf } from '../deadline.js';
import type { BandMaster } from '../master/band-master.js';
import type { LinearResult } from '../master/column-generation.js';
import { kindsWanted } from '../master/kinds-wanted.js';
import { sheetsByArea } from '../pattern/sheets-by-area.js';
import { type BranchRequest, SupplyBranches } from './branch-on-supplies.js';
import { closeByYields } from './close-by-yields.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { mayList } from './listed-masters.js';
import type { RoughBranches } from './rough-branches.js';

/** Orders of so few kinds of pieces are mostly searched to the end at once; of more, some are never. */
const FEW_KINDS = 4;
/**
 * Of these, ones that the metal of so few sheets is enough for nearly always are, so that most of the time
 * is best spent on that.
 */
const FEW_SHEETS = 2.5;
/** Share of the time left that may be taken at first, and where there are few kinds and few sheets. */
const SHARE_TO_BEGIN = 0.25;
const SHARE_OF_FEW = 0.8;
/** The same where patterns take long to price: a plan in two stages is known by then. */
const SHARE_OF_SLOW = 0.6;

/**
 * Raises the bound of a search: by branching on how many of each supply are taken, and where it
 * may, by searching each number to the end, which finds the best plan besides.
 */
export class BoundRaising {
  readonly #ground: SearchGround;
  readonly #incumbent: Incumbent;
  readonly #master: BandMaster;
  readonly #branches: SupplyBranches;
  /** Instead of them, where patterns take long to price. */
  readonly #rough: RoughBranches | undefined;

  /**
   * @param master of the whole problem
   * @param root its linear plan
   * @param rough branches that take the place of these, where patterns take long to price
   */
  constructor(
    ground: SearchGround,
    incumbent: Incumbent,
    master: BandMaster,
    root: LinearResult,
    rough: RoughBranches | undefined,
  ) {
    this.#ground = ground;
    this.#incumbent = incumbent;
    this.#master = master;
    this.#branches = new SupplyBranches(ground.classes, root);
    this.#rough = rough;
  }

  /** Whether numbers of sheets may be searched to the end. */
  get mayClose(): boolean {
    const { objective, stripLister } = this.#ground;
    return !mayList(this.#ground) && objective.caps.length === 0 && stripLister() !== undefined;
  }

  /** Whether it is best to do so before all else. */
  get closesSoon(): boolean {
    return this.mayClose && kindsWanted(this.#ground.demand) <= FEW_KINDS;
  }

  /** Whether more time may raise it further. */
  get mayGoOn(): boolean {
    return this.mayClose || this.#rough !== undefined;
  }

  /** Begins, by searching numbers to the end where that is best done before all else. */
  async begin(): Promise<void> {
    const { classes, demand } = this.#ground;
    const boxes = classes.map(({ box }) => box);
    const few = this.closesSoon && sheetsByArea(boxes, demand) <= FEW_SHEETS;
    const share = this.#rough === undefined ? SHARE_TO_BEGIN : SHARE_OF_SLOW;
    await this.raise(few ? SHARE_OF_FEW : share, this.closesSoon);
  }

  /**
   * Goes on from where it was left.
   * @param share of the time left that it may take
   * @param close whether numbers of sheets are searched to the end; only where they may be
   */
  async raise(share: number, close: boolean): Promise<void> {
    const incumbent = this.#incumbent;
    const master = this.#master;
    const deadline = shareOf(this.#ground.deadline, share);
    const ground = { ...this.#ground, deadline };
    const raised = close
      ? (...node: Parameters<NonNullable<BranchRequest['raised']>>) =>
          closeByYields(ground, incumbent, master, ...node)
      : undefined;
    const enough = (value: number) => incumbent.wouldMeet(value);
    const scaled =
      (await this.#rough?.raise(deadline, true)) ??
      (await this.#branches.raise({ ground, master, enough, raised }));
    incumbent.raise(scaled);
    incumbent.tell('branching');
  }
}
