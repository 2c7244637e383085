/**
 * What is to be cut, and from what. Every length is a whole number of ticks
 * (the shop's smallest mark) and every price a whole number of the smallest
 * coin, so that fits and sums are exact.
 */

/**
 * What metal a thing is of. Pieces are cut only from stock whose name and
 * thickness are both the same; what is absent is the same as what is absent.
 */
export interface Metal {
  /** Its name, compared letter by letter. */
  readonly metal?: string;
  /** Its thickness in any one unit, compared exactly. */
  readonly thickness?: number;
}

/** How the rolling direction of metal lies: along the length of a thing, or across it. */
export type Rolling = 'along' | 'across';

/** A rectangle wanted `quantity` times. */
export interface Piece extends Metal {
  /** Unique among the pieces of a problem. */
  readonly id: string;
  /** Ticks, at least 1. */
  readonly length: number;
  /** Ticks, at least 1. */
  readonly width: number;
  /** At least 1; 0 is allowed where there are spares. */
  readonly quantity: number;
  /** Whether it may lie turned by 90 degrees on the sheet. */
  readonly mayTurn: boolean;
  /**
   * How the metal must have been rolled, seen along the length of the piece.
   * Such a piece comes only from stock whose rolling direction is known. Absent
   * where it does not matter.
   */
  readonly rolling?: Rolling;
  /**
   * Extra copies that are welcome where they fit into stock that is used anyway;
   * never at a cost. 0 when absent.
   */
  readonly spares?: number;
}

/** A size of sheet: some on hand (already paid for), more to be had at a price. */
export interface Sheet extends Metal {
  readonly kind: 'sheet';
  /** Unique among the stock of a problem. */
  readonly id: string;
  /** Ticks, at least 1. */
  readonly length: number;
  /** Ticks, at least 1. */
  readonly width: number;
  /** Coins for one sheet that is bought, at least 0. */
  readonly price: number;
  /** Sheets in the shop. */
  readonly onHand: number;
  /** Sheets that can be bought, or `'any'` number of them. */
  readonly canBuy: number | 'any';
  /** Sheets are sold in packs of so many; 1 when absent. What is bought is a multiple of it. */
  readonly packSize?: number;
  /**
   * Coins at which a sheet on hand stands in the books. When absent, what the
   * rule for keeping offcuts would give for a whole one, or 0 without a rule.
   */
  readonly bookValue?: number;
  /** How the sheet was rolled, seen along its length; absent where that is not known. */
  readonly rolling?: Rolling;
}

/** One piece left over from an earlier job. */
export interface Offcut extends Metal {
  readonly kind: 'offcut';
  /** Unique among the stock of a problem. */
  readonly id: string;
  /** Ticks, at least 1. */
  readonly length: number;
  /** Ticks, at least 1. */
  readonly width: number;
  /** Coins at which it stands in the books; absent as for a sheet. */
  readonly bookValue?: number;
  /** How it was rolled, seen along its length; absent where that is not known. */
  readonly rolling?: Rolling;
}

export type Stock = Sheet | Offcut;

/** How often the direction of cutting may change, the last trim to size not counted. */
export type Stages = 2 | 3 | 'free';

/** The machine that cuts. It makes guillotine cuts only. */
export interface Shear {
  /**
   * Which way the first cuts run: `'along'` the stock's length, `'across'` it
   * (along its width), or whichever is better for each sheet.
   */
  readonly firstCut: 'along' | 'across' | 'either';
  /** The longest cut it can make, in ticks; absent means no limit. */
  readonly longestCut?: number;
  /**
   * The narrowest strip it can hold: nothing that a cut parts is narrower,
   * measured square to the cut. Trims of the stock's edges are exempt. Absent
   * or 0 means no limit.
   */
  readonly narrowestStrip?: number;
  /** Metal that every cut turns into dust, in ticks; 0 when absent, as for a shear. */
  readonly kerf?: number;
  /** Metal that is taken off all four edges of every sheet (not of offcuts) first; 0 when absent. */
  readonly trim?: number;
  /** 2 when absent. */
  readonly stages?: Stages;
}

/**
 * Which remnants go to the rack, and what they are worth there. The value grows
 * with the area, less a fixed sum for the trouble of each, so that one large
 * offcut is worth more than several small ones of the same area.
 */
export interface KeepRule extends Metal {
  /** The longer side must be at least so long, in ticks. */
  readonly leastLength: number;
  /** The shorter side must be at least so long, in ticks. */
  readonly leastWidth: number;
  /** Coins for a million square ticks. A whole sheet must not be worth more than its price. */
  readonly coinsPerMillion: number;
  /** `coinsPerMillion` are for so many millions instead of one, where ticks are so fine that one is worth little. */
  readonly millions?: number;
  /** Coins that the keeping of each offcut costs in trouble; 0 when absent. */
  readonly trouble?: number;
}

/** How much each kind of trouble counts among plans that cost the same. */
export interface Weights {
  /** For each different layout; 100 when absent. */
  readonly layout?: number;
  /** For each change of the shear's gauge; 10 when absent. */
  readonly gauge?: number;
  /** For each cut; 1 when absent. */
  readonly cut?: number;
}

/** The whole task handed to the planner. */
export interface CuttingProblem {
  readonly pieces: readonly Piece[];
  readonly stock: readonly Stock[];
  readonly shear: Shear;
  /** One at most for each metal and thickness. Without one, no remnant has a value. */
  readonly keep?: readonly KeepRule[];
  readonly weights?: Weights;
}
