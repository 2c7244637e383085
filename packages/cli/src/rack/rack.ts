import type { Coins } from '../money.js';
import type { Rolled } from '../order/order.js';

// What a rack is, whatever keeps it. Lengths are millimetres, whole in millionths
// as in plan.json; money is whole coins; times are ISO 8601 texts in UTC.

/** What a thing on the rack is made of. */
export interface RackMetal {
  /** The name of the metal, such as tinplate. */
  readonly metal: string;
  /** Absent where nobody has measured it. */
  readonly thickness?: number;
}

/** A size of metal: the longer side is its length. */
export interface RackSize extends RackMetal {
  readonly length: number;
  readonly width: number;
  /** How it was rolled, seen along its length; absent where that is not known. */
  readonly rolled?: Rolled;
}

/** What is told of a thing besides its size. Empty texts where nobody told. */
interface Told {
  /** Where it lies. */
  readonly place: string;
  /** Where it came from. */
  readonly origin: string;
  /** What it stands for in the books, each; absent where it goes by the rule for keeping offcuts. */
  readonly bookValue?: Coins;
}

/** A thing that comes to the rack: an offcut, or whole sheets of one size. */
export interface NewStock extends RackSize, Told {
  readonly kind: 'offcut' | 'sheets';
  /** The name of a size of sheet, empty for an offcut. */
  readonly name: string;
  /** 1 for an offcut. */
  readonly count: number;
}

/** What lies on the rack under one mark. */
export interface RackStock extends NewStock {
  /** What is written on it: unique, never used again. */
  readonly mark: string;
  /** When it came. */
  readonly addedAt: string;
  /** How many of them are promised to held plans; at most `count`. */
  readonly promised: number;
}

/** What may be corrected: each field that is there takes the place of the old one. */
export interface Correction {
  readonly name?: string;
  readonly length?: number;
  readonly width?: number;
  readonly metal?: string;
  readonly thickness?: number | null;
  readonly rolled?: Rolled | null;
  readonly place?: string;
  readonly origin?: string;
  readonly bookValue?: Coins | null;
  /** Of whole sheets, after counting them again. */
  readonly count?: number;
}

/** Which of the rack is meant. All that is absent does not matter. */
export interface RackFilter {
  readonly kind?: 'offcut' | 'sheets';
  readonly metal?: string;
  readonly thickness?: number;
  /** At least so long, and so wide: lying either way. */
  readonly leastLength?: number;
  readonly leastWidth?: number;
  /** True for those alone that are promised to nobody; of sheets, some at least. */
  readonly free?: boolean;
  /** True for what has gone as well. */
  readonly gone?: boolean;
}

/** What has happened to a thing on the rack. */
export type RackDeed =
  | 'added'
  | 'corrected'
  | 'removed'
  | 'bought'
  | 'promised'
  | 'let go'
  | 'cut'
  | 'kept'
  | 'undone';

/** One line of the rack's ledger. */
export interface RackEvent {
  /** From 1, in order. */
  readonly number: number;
  readonly at: string;
  readonly mark: string;
  readonly deed: RackDeed;
  /** By how many its count changed. */
  readonly change: number;
  /** By how many those promised to the job changed. */
  readonly promisedChange: number;
  /** The number of the job it was for. */
  readonly job?: number;
  /** The number of the booking that it belongs to. */
  readonly booking?: number;
  /** A reason, or what was corrected; empty where there is nothing to say. */
  readonly note: string;
}

/** A plan that was held or booked. */
export interface RackJob {
  readonly number: number;
  /** The name of its order. */
  readonly name: string;
  /** What tells its plan from all others. */
  readonly plan: string;
  readonly state: 'held' | 'partly booked' | 'booked' | 'let go';
  readonly since: string;
  /** Of each layout, how often it is to be cut, and how often it was. */
  readonly layouts: readonly { readonly times: number; readonly booked: number }[];
}

/** What a rack asks of a plan to hold or to book it. */
export interface PlannedCutting {
  /** What tells this plan from all others: a digest of its file. */
  readonly plan: string;
  /** The name of its order. */
  readonly name: string;
  /** The id of the rack that it was made from; absent for a plan made without one. */
  readonly rackId?: string;
  /** The smallest mark of the plan, to which sizes on the rack are rounded down. */
  readonly smallestMark: number;
  readonly stock: readonly PlannedStock[];
  readonly layouts: readonly PlannedLayout[];
}

/** A stock that a plan cuts. */
export interface PlannedStock extends RackSize {
  readonly id: string;
  readonly kind: 'offcut' | 'sheets';
  /** The mark under which it lies on the rack; absent for metal that never was there. */
  readonly mark?: string;
  /** Of sheets: how many of those on the rack it may take; 1 for an offcut of the rack. */
  readonly fromRack: number;
  /** Of sheets: how many it takes that the shop has beside the rack. These are cut first. */
  readonly beside: number;
  /** Of sheets: how many are bought for it, those of a pack that are left over included. */
  readonly bought: number;
  /** Of sheets that are bought: what each costs, which then stands for it in the books. */
  readonly price?: Coins;
}

export interface PlannedLayout {
  /** Which of `stock`. */
  readonly stock: number;
  readonly times: number;
  /** What each cutting of it leaves for the rack. */
  readonly keeps: readonly PlannedKeep[];
  /** Square millimetres that each cutting of it leaves as scrap. */
  readonly scrap: number;
}

export interface PlannedKeep extends RackSize {
  readonly value: Coins;
}

/** How often to book one layout. */
export interface LayoutTimes {
  /** From 0. */
  readonly layout: number;
  readonly times: number;
}

/** An offcut that a booking put on the rack, to be written on the metal. */
export interface FreshMark extends RackSize {
  readonly mark: string;
  /** Which layout left it, from 0, and which cutting of it, from 1. */
  readonly layout: number;
  readonly cutting: number;
}

/** What a booking did. */
export interface Booked {
  readonly booking: number;
  readonly job: RackJob;
  /** What it took off the rack. */
  readonly taken: readonly { readonly mark: string; readonly count: number }[];
  /** What came to the rack with it from the shop that sells sheets. */
  readonly bought: readonly { readonly mark: string; readonly count: number }[];
  readonly kept: readonly FreshMark[];
  /**
   * Marks whose metal the rest of the plan can no longer have: it is gone, changed or
   * promised to another. What is left is to be planned again.
   */
  readonly lacking: readonly string[];
  /** Square millimetres of scrap, and grams where the thickness is known. */
  readonly scrapArea: number;
  readonly scrapGrams?: number;
}

/** A rule of the shop: which offcuts of a metal are worth keeping. */
export interface ShopKeepRule extends RackMetal {
  /** The longer side must be at least so long. */
  readonly leastLength: number;
  readonly leastWidth: number;
  /** Coins for a square metre of it; 0 where it is kept without a value. */
  readonly worth: Coins;
  /** Coins that the keeping of each costs in trouble. */
  readonly trouble: Coins;
}

/** Sums over a rack. */
export interface RackWorth {
  readonly offcuts: number;
  readonly sheets: number;
  /** Square millimetres of each. */
  readonly offcutArea: number;
  readonly sheetArea: number;
  /** Of all that has a book value. */
  readonly value: Coins;
  /** Offcuts and sheets without one. */
  readonly unvalued: number;
  /** Scrap of all bookings so far: square millimetres, and grams as far as known. */
  readonly scrapArea: number;
  readonly scrapGrams: number;
}

/**
 * A shop's metal: what lies there, what is promised, what happened. Every change is
 * whole or not at all, and seen at once by all who have the rack open.
 *
 * Every method may throw a RackError, which says what is wrong and what to do.
 */
export interface Rack {
  /** What tells this rack from all others. */
  readonly id: string;
  /** Grows by one with every change. */
  readonly revision: number;

  /** Oldest first. */
  list(filter?: RackFilter): readonly RackStock[];
  find(mark: string): RackStock | undefined;
  /** All that happened to one mark, oldest first. */
  history(mark: string): readonly RackEvent[];
  jobs(): readonly RackJob[];
  worth(): RackWorth;
  keepRules(): readonly ShopKeepRule[];

  /**
   * Puts things on the rack. Sheets of a size that lies there already join those
   * under their mark.
   * @returns the mark of each, in order
   */
  add(stock: readonly NewStock[]): readonly string[];
  correct(mark: string, correction: Correction): RackStock;
  /** Takes things away that no plan uses: sold, spoilt, lost. */
  remove(mark: string, count: number, reason: string): void;
  /**
   * Makes the rack's list agree with one that was edited: new lines are added,
   * changed ones corrected. What is not listed stays. All or nothing.
   */
  merge(lines: readonly MergeLine[]): MergeResult;
  /** In place of the rule for the same metal and thickness. */
  setKeepRule(rule: ShopKeepRule): void;

  /** Promises to a plan what it takes from the rack. */
  hold(cutting: PlannedCutting): RackJob;
  /** Ends the promise; what was booked stays booked. */
  letGo(plan: string): RackJob;
  /** The sheets that a plan buys come to the rack, promised to it. */
  receive(cutting: PlannedCutting): RackJob;
  /**
   * Records that layouts were cut: takes off what they used, puts on what they kept.
   * @param layouts all that is not booked yet when absent
   */
  book(cutting: PlannedCutting, layouts?: readonly LayoutTimes[]): Booked;
  /** Takes back the last booking that stands. */
  undo(): { readonly booking: number; readonly job: RackJob; readonly gone: readonly string[] };

  close(): void;
}

/** One line of an edited list. */
export interface MergeLine extends NewStock {
  /** Absent for what is new. */
  readonly mark?: string;
  /** Where it stands, for messages: a line number. */
  readonly line: number;
}

export interface MergeResult {
  readonly added: readonly string[];
  readonly corrected: readonly string[];
  /** Lines that said what the rack says already. */
  readonly unchanged: number;
}

/** Opens racks; the one place that knows how they are kept. */
export interface Racks {
  /** Opens the rack, making a new one where there is no such file. */
  open(path: string): Rack;
  /** Opens the rack if there is one. */
  openIfThere(path: string): Rack | undefined;
}
