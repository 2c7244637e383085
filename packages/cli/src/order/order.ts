import type {
  BendRule,
  EdgeTreatment,
  HemFace,
  Metal,
  Outline,
  Seam,
  SeamPlace,
  SizeFace,
} from '@stripwright/strip-geometry';
import type { Size } from '../length/parse-size.js';
import type { Rule } from '../length/print-length.js';
import type { Coins } from '../money.js';
import type { Exact } from '../quote/exact.js';
import type { Handwork } from './handwork.js';

/** An order as read and checked. Millimetres and coins. */
export interface Order {
  readonly name: string;
  readonly shop: Shop;
  readonly sheets: readonly SheetLine[];
  readonly offcuts: readonly OffcutLine[];
  readonly items: readonly Item[];
}

/** How the shop works. */
export interface Shop {
  readonly rule: Rule;
  /** The sign written with amounts; empty for none. */
  readonly currency: string;
  readonly metal: Metal;
  /** Thickness of the metal; absent where the order does not tell it. */
  readonly thickness?: number | undefined;
  readonly bendRule: BendRule;
  readonly shear: {
    readonly firstCut: 'along' | 'across' | 'either';
    readonly longestCut?: number | undefined;
    /** The narrowest strip that it can hold. */
    readonly narrowestStrip?: number | undefined;
    /** What every cut turns into dust. */
    readonly kerf?: number | undefined;
    /** What is taken off all four edges of a sheet first. */
    readonly edgeTrim?: number | undefined;
    readonly stages?: 2 | 3 | 'free' | undefined;
  };
  /** The least offcut that goes back on the rack; absent where none does. */
  readonly keepFrom?: Size | undefined;
  /** What a square foot of a kept offcut is worth in a shop that works in inches, or a square metre. */
  readonly offcutWorth?: Coins | undefined;
  /** What the keeping of each costs in trouble. */
  readonly offcutTrouble?: Coins | undefined;
  /** What its work costs; absent where it is not reckoned. */
  readonly labour?: Labour | undefined;
  /** What it adds to its costs, in per cent. */
  readonly margin?: Exact | undefined;
  /** The file of its rack, its path from the folder of the order; absent for the usual rack. */
  readonly rack?: string | undefined;
}

/** What work costs. */
export interface Labour {
  readonly hourlyRate: Coins;
  /** How long each takes, once; nothing where absent. */
  readonly minutes: Readonly<Record<Work, Exact | undefined>>;
}

/** Work that is counted: a cut of the shear, a bend or formed curve, a notch or snip, a seam. */
export type Work = 'cut' | 'bend' | 'notch' | 'seam';

export interface SheetLine {
  readonly name: string;
  readonly size: Size;
  readonly price: Coins;
  readonly onHand: number;
  readonly canBuy: number | 'any';
  /** Sheets in a pack; absent where they are sold one by one. */
  readonly packSize?: number | undefined;
  /** What one on hand stands for in the books. */
  readonly bookValue?: Coins | undefined;
  readonly rolled?: Rolled | undefined;
  /** What it is of; absent where it is of the shop's metal. */
  readonly own?: OwnMetal | undefined;
}

/** What a stock is of, where that is not the shop's metal or thickness. */
export interface OwnMetal {
  readonly metal: Metal;
  readonly thickness?: number | undefined;
}

/** How metal is rolled, seen along the length of a thing. */
export type Rolled = 'along' | 'across';

export interface OffcutLine {
  readonly name: string;
  readonly size: Size;
  readonly bookValue?: Coins | undefined;
  readonly rolled?: Rolled | undefined;
  readonly own?: OwnMetal | undefined;
}

export type Item = CutterItem | RectangleItem;

interface ItemBase {
  readonly name: string;
  readonly quantity: number;
  /** Whether the blank may lie turned on the sheet. */
  readonly mayTurn: boolean;
  /** How its metal must be rolled; absent where it does not matter. */
  readonly rolled?: Rolled | undefined;
  /** Extra copies that are welcome where they cost nothing. */
  readonly spares?: number | undefined;
}

/** How a cutter is made, whatever its outline. */
export interface Making {
  readonly edge: EdgeTreatment;
  /** The face of the wall that the edge is folded to. */
  readonly hemFace: HemFace;
  readonly seam: Seam;
  /** Where the ends meet; absent where it is for the geometry to choose. */
  readonly seamAt?: SeamPlace | undefined;
  /** What the outline is the size of. */
  readonly sizeIs: SizeFace;
  /** Degrees; corners that turn through no more are formed. */
  readonly cornerAngle?: number | undefined;
  /** How its hem is cut and bent, and the limits it is checked by. */
  readonly handwork: Handwork;
}

/** A cutter, bent from a strip. */
export interface CutterItem extends ItemBase, Making {
  readonly kind: 'cutter';
  /** The name of its outline family, or the file of its drawing. */
  readonly family: string;
  /** One, or all those of a drawing. */
  readonly outlines: readonly Outline[];
  readonly depth: number;
}

/** A plain rectangle, cut flat. */
export interface RectangleItem extends ItemBase {
  readonly kind: 'rectangle';
  readonly size: Size;
}
