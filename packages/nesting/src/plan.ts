/**
 * A cutting plan. Lengths in ticks, money in coins, as in the problem.
 * Positions are measured from the stock's lower left corner: x along its
 * length, y along its width.
 */

/** A piece where it lies on the stock. */
export interface PlacedPiece {
  /** The id of the piece in the problem. */
  readonly piece: string;
  readonly x: number;
  readonly y: number;
  /** Extent along x, as it lies. */
  readonly length: number;
  /** Extent along y, as it lies. */
  readonly width: number;
  /** True where it lies turned by 90 degrees, so that length and width are swapped. */
  readonly turned: boolean;
}

/** A rectangle that is left over when the cutting is done. */
export interface Remnant {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * One straight cut from edge to edge of the rectangle it divides.
 * Stage 1 shears the stock into strips, stage 2 cuts a strip to length, and
 * stage 3 trims a piece to its width.
 */
export interface Cut {
  readonly stage: 1 | 2 | 3;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** One way of cutting one stock, and how many of that stock to cut so. */
export interface Layout {
  /** The id of the stock in the problem. */
  readonly stock: string;
  /** At least 1; an offcut is always 1. */
  readonly count: number;
  readonly pieces: readonly PlacedPiece[];
  /** In the order they are made. */
  readonly cuts: readonly Cut[];
  /** Together with the pieces they cover the stock exactly. */
  readonly remnants: readonly Remnant[];
}

/** Sheets to be bought of one size. */
export interface Purchase {
  /** The id of the sheet in the problem. */
  readonly stock: string;
  readonly count: number;
  /** Coins for all of them. */
  readonly cost: number;
}

/** The least that any plan with this kind of cutting can cost. */
export interface CostBound {
  /** Coins; never above the cost of the plan. */
  readonly cost: number;
  /** True where the plan's cost equals it, so that nothing cheaper exists. */
  readonly proven: boolean;
}

/** What the planner did, in counts that do not depend on the machine. */
export interface PlanEffort {
  /** Linear masters solved. */
  readonly rounds: number;
  /** Strip patterns and sheet patterns generated. */
  readonly patterns: number;
  /** Integer masters solved. */
  readonly integerMasters: number;
  /** How the bound was reached, or what stopped the search. */
  readonly ending:
    | 'bound met'
    | 'all patterns within the gap searched'
    | 'time limit'
    | 'pattern limit';
}

export interface CuttingPlan {
  readonly layouts: readonly Layout[];
  readonly buy: readonly Purchase[];
  /** Coins for all that is bought. */
  readonly cost: number;
  readonly bound: CostBound;
  readonly effort: PlanEffort;
}

/** What came of planning. Misuse is thrown; an order that cannot be cut is an outcome. */
export type PlanOutcome =
  | { readonly status: 'planned'; readonly plan: CuttingPlan }
  /** No stock can hold these pieces, however it is cut. */
  | {
      readonly status: 'piece too large';
      readonly pieces: readonly string[];
      /** The stock with the largest area, by id. */
      readonly largestStock: string;
      /** Those of the pieces that would fit if the shear could make a longer cut. */
      readonly forTheShear: readonly string[];
    }
  /** Every piece fits somewhere, but the stock in reach is proven not to be enough. */
  | { readonly status: 'not enough stock' }
  /** No plan was found before the limit, and none was ruled out. */
  | { readonly status: 'none found' };
