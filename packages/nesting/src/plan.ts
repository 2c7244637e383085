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
  /** True where the rule for keeping offcuts sends it to the rack. */
  readonly keep: boolean;
  /** Coins it is worth there; 0 for scrap. */
  readonly value: number;
}

/**
 * One straight cut from edge to edge of the rectangle it divides. Stage 0 trims
 * the edges of the stock; stage 1 shears what is left into strips; each later
 * stage cuts square to the one before. The last may be a trim to size.
 *
 * The line is the edge of what lies nearer the origin. A kerf turns the metal
 * beyond it to dust, over its whole width or as far as there is metal.
 */
export interface Cut {
  readonly stage: number;
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
  /** With the pieces, the kerfs and the trimmed edges they cover the stock exactly. */
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

/** Where the cost of a plan comes from, in coins. */
export interface CostParts {
  /** Paid for sheets that are bought. */
  readonly bought: number;
  /** Book value of the sheets on hand and the offcuts that are used. */
  readonly fromShop: number;
  /** Value of the offcuts that go to the rack, and of sheets of a pack that are left over. */
  readonly kept: number;
}

/**
 * The least that any plan can cost that keeps to the same restrictions: the
 * stages, the shear's limits, and remnants valued as the cuts leave them.
 */
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
  /** Patterns generated. */
  readonly patterns: number;
  /** Integer masters solved. */
  readonly integerMasters: number;
  /** Nodes of branching visited. */
  readonly nodes: number;
  /** How the bound was reached, or what stopped the search. */
  readonly ending: SearchEnding;
}

/** Why a search ended. */
export type SearchEnding =
  | 'bound met'
  | 'all patterns within the gap searched'
  | 'time limit'
  | 'called off'
  | 'pattern limit';

export interface CuttingPlan {
  readonly layouts: readonly Layout[];
  readonly buy: readonly Purchase[];
  /** Coins: `parts.bought + parts.fromShop - parts.kept`. */
  readonly cost: number;
  readonly parts: CostParts;
  /** Spares that found room, by the id of the piece; those without any are left out. */
  readonly spares: readonly { readonly piece: string; readonly count: number }[];
  readonly bound: CostBound;
  readonly effort: PlanEffort;
}

/** What came of planning. Misuse is thrown; an order that cannot be cut is an outcome. */
export type PlanOutcome =
  | { readonly status: 'planned'; readonly plan: CuttingPlan }
  /** No stock is of the metal and thickness of these pieces. */
  | { readonly status: 'no stock of the metal'; readonly pieces: readonly string[] }
  /** These pieces are narrower than the narrowest strip that the shear can hold. */
  | { readonly status: 'piece too narrow'; readonly pieces: readonly string[] }
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
