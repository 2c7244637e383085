import { MaxEntropy, type SolveLimits } from '../entropy/max-entropy.js';
import type { BandBook } from '../master/band-book.js';
import { bandColumns, lossOfLack, restColumns, setBandMultipliers } from './plan-entropy.js';

/** Slots that are to be filled, and pieces that are wanted. */
export interface OpenBands {
  readonly book: BandBook;
  /** Bands of the book to choose from. */
  readonly bands: readonly number[];
  /** By slot of the book, how many are open. */
  readonly slots: readonly number[];
  /** Of each piece, how many are wanted. */
  readonly demand: readonly number[];
}

/** Whole bands, and what they leave open: the bands that are likely there. */
export interface DecimatedBands extends OpenBands {
  /** By band of the book, how many are settled. */
  readonly taken: readonly number[];
  /** So many pieces will lack, it is expected. */
  readonly lacking: number;
}

/** A state of the plan. */
export interface OpenBandState {
  readonly right: Float64Array;
  readonly refused: Uint8Array;
  readonly taken: readonly number[];
  readonly left: number;
  readonly multipliers: Float64Array;
  readonly amounts: Float64Array;
}

/** What a piece is worth at least, and at most where what lacks is to lose more than that. */
const LEAST_WORTH = 0.05;
const MOST_WORTH = 150;
/** What going without a piece loses while the worth of pieces is not known yet. */
const FORBIDDEN = 10_000;
/** The least that is expected of bands that count as likely, and how many are told of. */
const RARE = 1e-5;
const MOST_LIKELY = 1_000;

/**
 * The most even plan of bands in open slots, some of which are settled and others refused as
 * time goes on. A band stands in it once for each slot that it may lie in: its own, and those
 * that have no narrower one with bands between.
 */
export class OpenBandPlan {
  readonly #open: OpenBands;
  readonly #over: (() => boolean) | undefined;
  /** By place: the band of the book, the row of its slot, and 1 where it was refused. */
  readonly #bands: readonly number[];
  readonly #row: readonly number[];
  readonly #refused: Uint8Array;
  /** Slots of the book that are open. */
  readonly #slots: readonly number[];
  readonly #numbers: MaxEntropy;
  readonly #right: Float64Array;
  readonly #taken: number[];
  #left: number;

  /**
   * @param worth of each piece, in units of entropy; no piece may lack at first
   * @param over asked now and then; true gives up
   */
  constructor(open: OpenBands, worth: readonly number[], over?: () => boolean) {
    this.#over = over;
    const { book, slots, demand } = open;
    this.#open = open;
    this.#slots = [...slots.keys()].filter((slot) => slots[slot] > 0);
    const places = placesOf(open, this.#slots);
    this.#bands = places.map(({ band }) => band);
    this.#row = places.map(({ index }) => demand.length + index);
    const forbidden = demand.map(() => FORBIDDEN);
    const columns = [
      ...bandColumns(book, this.#bands, this.#row),
      ...restColumns(forbidden, this.#slots.length),
    ];
    // A band lies in one slot.
    this.#numbers = new MaxEntropy(demand.length + this.#slots.length, columns, demand.length);
    setBandMultipliers(this.#numbers.multipliers, book, this.#bands, this.#row, worth);
    this.#right = Float64Array.from([...demand, ...this.#slots.map((slot) => -slots[slot])]);
    this.#refused = new Uint8Array(this.#bands.length);
    this.#taken = book.bands.map(() => 0);
    this.#left = this.#slots.reduce((sum, slot) => sum + slots[slot], 0);
    this.#activate();
  }

  get rows(): number {
    return this.#numbers.rows;
  }

  get places(): number {
    return this.#bands.length;
  }

  /** Slots that are open. */
  get left(): number {
    return this.#left;
  }

  get wanted(): boolean {
    return this.#open.demand.some((_, piece) => this.#right[piece] > 0);
  }

  /** By place, how many bands are expected there; 0 where none may lie. */
  get amounts(): Float64Array {
    return this.#numbers.amounts;
  }

  get multipliers(): Float64Array {
    return this.#numbers.multipliers;
  }

  /** @returns the entropy; undefined where numbers are beyond doubles, or it is over */
  solve(limits: SolveLimits): number | undefined {
    return this.#numbers.solve(this.#right, { ...limits, over: this.#over });
  }

  /** Bands of the book of which more than hardly any is expected. */
  likely(): readonly number[] {
    const likely = this.#bands.filter((_, place) => this.amounts[place] > RARE);
    return [...new Set(likely)];
  }

  /** What pieces are worth, in units of entropy. */
  worth(): readonly number[] {
    return this.#open.demand.map((_, piece) => Math.max(LEAST_WORTH, -this.multipliers[piece]));
  }

  /** From now on pieces may lack, at a loss that is above what they are worth. */
  allowLack(): void {
    const firstLack = this.places + this.#open.demand.length;
    this.worth().forEach((worth, piece) => {
      const loss = Math.max(lossOfLack(Math.min(MOST_WORTH, worth)), worth + 1);
      this.#numbers.setEnergy(firstLack + piece, loss);
    });
  }

  /** The most copies of one piece that the band of a place holds. */
  copiesIn(place: number): number {
    const { counts } = this.#open.book.bands[this.#bands[place]];
    return Math.max(...counts.map(([, copies]) => copies));
  }

  /** How many bands of a place the open slots and the pieces that are wanted allow. */
  fits(place: number): number {
    const { counts } = this.#open.book.bands[this.#bands[place]];
    return counts.reduce(
      (least, [piece, copies]) => Math.min(least, Math.floor(this.#right[piece] / copies)),
      -this.#right[this.#row[place]],
    );
  }

  /** Settles so many bands of a place; below 0, takes them back. */
  take(place: number, count: number): void {
    const band = this.#bands[place];
    for (const [piece, copies] of this.#open.book.bands[band].counts) {
      this.#right[piece] -= copies * count;
    }
    this.#right[this.#row[place]] += count;
    this.#taken[band] += count;
    this.#left -= count;
    this.#activate();
  }

  /** What is settled and refused by now, and the plan of the rest; to go back to later. */
  state(): OpenBandState {
    return {
      right: this.#right.slice(),
      refused: this.#refused.slice(),
      taken: this.#taken.slice(),
      left: this.#left,
      multipliers: this.multipliers.slice(),
      amounts: this.amounts.slice(),
    };
  }

  goBackTo(state: OpenBandState): void {
    this.#right.set(state.right);
    this.#refused.set(state.refused);
    state.taken.forEach((count, band) => {
      this.#taken[band] = count;
    });
    this.#left = state.left;
    this.multipliers.set(state.multipliers);
    this.amounts.set(state.amounts);
    this.#activate();
  }

  refuse(place: number, refused: boolean): void {
    this.#refused[place] = refused ? 1 : 0;
    this.#activate();
  }

  result(): DecimatedBands {
    const { book, demand, slots: slotsBefore } = this.#open;
    const { amounts } = this;
    const likely = [...this.#bands.keys()].filter((place) => amounts[place] > RARE);
    likely.sort((a, b) => amounts[b] - amounts[a] || a - b);
    const bands = [...likely, ...this.#toSpare()].map((place) => this.#bands[place]);
    const slots = slotsBefore.map(() => 0);
    this.#slots.forEach((slot, index) => {
      slots[slot] = 0 - this.#right[demand.length + index];
    });
    const firstLack = this.places + demand.length;
    const lacking = amounts.subarray(firstLack, firstLack + demand.length);
    return {
      book,
      bands: [...new Set(bands)].slice(0, MOST_LIKELY),
      slots,
      demand: demand.map((_, piece) => this.#right[piece]),
      taken: this.#taken,
      lacking: lacking.reduce((sum, amount) => sum + amount, 0),
    };
  }

  /** Bands that hold more of a piece than is left are of no use, though a part of one might look so. */
  #activate(): void {
    const { book, demand } = this.#open;
    const { active } = this.#numbers;
    const right = this.#right;
    this.#bands.forEach((band, place) => {
      const open = this.#refused[place] === 0 && right[this.#row[place]] < 0;
      const ofUse =
        open && book.bands[band].counts.every(([piece, copies]) => copies <= right[piece]);
      active[place] = ofUse ? 1 : 0;
    });
    const firstEmpty = this.places + 2 * demand.length;
    this.#slots.forEach((_, index) => {
      active[firstEmpty + index] = right[demand.length + index] < 0 ? 1 : 0;
    });
  }

  /** Places in open slots of bands that cut more than is wanted, those that cut least of it first. */
  #toSpare(): readonly number[] {
    const { book } = this.#open;
    const right = this.#right;
    const countsAt = (place: number) => book.bands[this.#bands[place]].counts;
    const spare = [...this.#bands.keys()].map((place) =>
      countsAt(place).reduce(
        (sum, [piece, copies]) => sum + Math.max(0, copies - Math.max(0, right[piece])),
        0,
      ),
    );
    const wanted = (place: number) => countsAt(place).some(([piece]) => right[piece] > 0);
    return [...this.#bands.keys()]
      .filter((place) => spare[place] > 0 && right[this.#row[place]] < 0 && wanted(place))
      .sort((a, b) => spare[a] - spare[b] || a - b);
  }
}

/** Where bands may lie, by index of the open slot. */
function placesOf(
  { book, bands }: OpenBands,
  slots: readonly number[],
): readonly { readonly band: number; readonly index: number }[] {
  const ofSlot = new Map<number, number[]>();
  for (const band of bands) {
    const { slot } = book.bands[band];
    const same = ofSlot.get(slot);
    if (same === undefined) ofSlot.set(slot, [band]);
    else same.push(band);
  }
  return slots.flatMap((slot, index) => {
    const narrower = [...ofSlot.keys()]
      .filter((other) => book.mayLieIn(other, slot))
      .sort((a, b) => book.slots[b].extent - book.slots[a].extent);
    return [slot, ...narrower.slice(0, 1)].flatMap((from) =>
      (ofSlot.get(from) ?? []).map((band) => ({ band, index })),
    );
  });
}
