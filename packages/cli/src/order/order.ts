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
  };
  /** The least offcut that goes back on the rack; absent where none does. */
  readonly keepFrom?: Size | undefined;
}

export interface SheetLine {
  readonly name: string;
  readonly size: Size;
  readonly price: Coins;
  readonly onHand: number;
  readonly canBuy: number | 'any';
}

export interface OffcutLine {
  readonly name: string;
  readonly size: Size;
}

export type Item = CutterItem | RectangleItem;

interface ItemBase {
  readonly name: string;
  readonly quantity: number;
  /** Whether the blank may lie turned on the sheet. */
  readonly mayTurn: boolean;
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
