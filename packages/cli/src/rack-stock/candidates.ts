import type { CuttingProblem, Piece, Rolling, Stock } from '@stripwright/nesting';
import { rackWorth } from '../order/keep-rule.js';
import { BestFew } from './best-few.js';
import { laysOf, usableBox } from './lays.js';
import { metalPrice, type Offer, type Prices, type Saving, savingOf } from './savings.js';

/** As many things from the rack as a plan considers: more would slow the search and save little. */
export const MOST_CONSIDERED = 60;

/** Which of the rack are handed to the planner. */
export interface Choice {
  /** How many of those offered can hold a blank. */
  readonly fitting: number;
  /** Which of those offered were chosen, by their places, ascending. */
  readonly chosen: readonly number[];
}

interface Ranked {
  readonly saving: Saving;
  readonly place: number;
}

/**
 * Chooses from a large rack what is worth considering. Each stock is reckoned with
 * as a grid of one blank, for every blank; of each blank are remembered those that
 * save most, and those of which least is wasted. Each blank has its best; then the
 * one that lacks most metal has its next, until the demand of all is met, by turns of what saves
 * most and what wastes least, until `most` are chosen. Of equals the older, which
 * stands before, so that a rack does not grow old.
 *
 * The time grows as the number of stocks times that of blanks.
 */
export function chooseCandidates(
  problem: CuttingProblem,
  offered: readonly Stock[],
  most = MOST_CONSIDERED,
): Choice {
  const pieces = problem.pieces.filter(({ quantity }) => quantity > 0);
  const { shear, keep = [], stock } = problem;
  const sheets = stock.flatMap((entry) => (entry.kind === 'sheet' ? [entry] : []));
  const prices: Prices = { metal: metalPrice(sheets), keep: keep[0] };
  const blanks = pieces.map((piece) => new BlankRanking(piece, most));
  const fitting: number[] = [];
  offered.forEach((entry, place) => {
    const box = usableBox(entry, shear);
    if (box === undefined) return;
    const offer: Offer = {
      box,
      count: entry.kind === 'sheet' ? entry.onHand : 1,
      bookValue:
        entry.bookValue ?? (prices.keep ? rackWorth(box.length, box.width, prices.keep) : 0),
    };
    let fits = false;
    for (const blank of blanks) {
      const saving = savingOf(offer, blank.piece, blank.lays(entry.rolling), shear, prices);
      if (saving === undefined) continue;
      fits = true;
      blank.rank({ saving, place });
    }
    if (fits) fitting.push(place);
  });
  const chosen = fitting.length <= most ? fitting : takeTurns(blanks, most);
  return { fitting: fitting.length, chosen };
}

function savesMore({ saving: one }: Ranked, { saving: other }: Ranked): boolean {
  return one.coins > other.coins || (one.coins === other.coins && one.share > other.share);
}

function wastesLess({ saving: one }: Ranked, { saving: other }: Ranked): boolean {
  return one.share > other.share || (one.share === other.share && one.coins > other.coins);
}

/** The best stocks for one blank. */
class BlankRanking {
  readonly piece: Piece;
  readonly area: number;
  readonly #lays: Readonly<Record<Rolling | 'unknown', ReturnType<typeof laysOf>>>;
  readonly #saving: BestFew<Ranked>;
  readonly #thrift: BestFew<Ranked>;

  constructor(piece: Piece, most: number) {
    this.piece = piece;
    this.area = piece.length * piece.width;
    this.#lays = {
      along: laysOf(piece, 'along'),
      across: laysOf(piece, 'across'),
      unknown: laysOf(piece, undefined),
    };
    this.#saving = new BestFew(most, savesMore);
    this.#thrift = new BestFew(most, wastesLess);
  }

  lays(rolled: Rolling | undefined) {
    return this.#lays[rolled ?? 'unknown'];
  }

  rank(entry: Ranked): void {
    this.#saving.offer(entry);
    this.#thrift.offer(entry);
  }

  bestBy(what: 'saving' | 'thrift'): readonly Ranked[] {
    return what === 'saving' ? this.#saving.entries : this.#thrift.entries;
  }
}

function takeTurns(blanks: readonly BlankRanking[], most: number): readonly number[] {
  const chosen = new Set<number>();
  let idle = 0;
  for (let turn = 0; idle < 2 && chosen.size < most; turn += 1) {
    const before = chosen.size;
    meetDemand(blanks, turn % 2 === 0 ? 'saving' : 'thrift', chosen, most);
    idle = chosen.size === before ? idle + 1 : 0;
  }
  return [...chosen].sort((one, other) => one - other);
}

/** Chooses one for each blank, then for the one that lacks most metal, until all have enough. */
function meetDemand(
  blanks: readonly BlankRanking[],
  by: 'saving' | 'thrift',
  chosen: Set<number>,
  most: number,
): void {
  const lacking = blanks.map((blank) => ({
    blank,
    queue: blank.bestBy(by).filter(({ place }) => !chosen.has(place)),
    next: 0,
    pieces: blank.piece.quantity,
  }));
  type Lacking = (typeof lacking)[number];
  const need = ({ pieces, blank: { piece, area } }: Lacking): number =>
    // Whoever has nothing yet comes before all others.
    pieces === piece.quantity ? Number.MAX_VALUE : pieces * area;
  while (chosen.size < most) {
    const open = lacking.filter(({ pieces, queue, next }) => pieces > 0 && next < queue.length);
    const [first, ...others] = open;
    if (first === undefined) return;
    const needy = others.reduce((one, other) => (need(other) > need(one) ? other : one), first);
    const taken = needy.queue[needy.next];
    needy.next += 1;
    if (taken === undefined || chosen.has(taken.place)) continue;
    chosen.add(taken.place);
    needy.pieces -= taken.saving.pieces;
  }
}
