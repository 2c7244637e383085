import type { NamedLength, NamedLengths } from '../named-length.js';

/**
 * What is done to the upper edge of a cutter so that it does not cut the hand
 * and does not buckle. The lower edge, which cuts the dough, stays as sheared.
 * One file for each treatment. Millimetres; distances on the flat strip run
 * from the raw edge that is treated.
 */
export interface EdgeTreatment {
  /** Lower-case words, such as `single hem`. */
  readonly name: string;
  /** Added to the depth. */
  readonly allowance: number;
  /** Fold lines, distances from the raw edge, ascending; the last is where the wall begins. */
  readonly foldLines: readonly number[];
  /** Depth of a notch at a bend: from the raw edge to the line it must not pass, 0 where none is cut. */
  readonly notchDepth: number;
  /** Width of what is folded last, from the wall to its free edge. */
  readonly foldedWidth: number;
  /** Layers of metal that lie on the wall's face when it is done. */
  readonly layers: number;
  /** Diameter of the wire inside, 0 without one. */
  readonly wire: number;
  /** Whether a tab can be tucked in before it is closed. */
  readonly takesTab: boolean;
  /** Where the allowance comes from. */
  readonly source: string;
}

/** An edge treatment that a shop can choose by name. */
export interface EdgeKind {
  readonly name: string;
  /** One line for help texts. */
  readonly summary: string;
  /** The lengths it needs, in order. */
  readonly sizes: readonly NamedLength[];
  /** Lengths that make a good example. */
  readonly example: NamedLengths;
  /** @throws StripError naming the length that is missing or not above 0. */
  make(sizes: NamedLengths): EdgeTreatment;
}
