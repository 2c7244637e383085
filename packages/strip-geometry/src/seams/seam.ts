import type { EdgeTreatment } from '../edges/edge-treatment.js';
import type { HemFace } from '../edges/hem-face.js';
import type { NamedLength, NamedLengths } from '../named-length.js';
import type { Point } from '../outline.js';

/**
 * How the ends of a strip are joined. One file for each seam. Millimetres.
 * The end of the strip comes to lie over its start.
 */
export interface Seam {
  /** Lower-case words, such as `tucked tab`. */
  readonly name: string;
  /** Added before the developed length. */
  readonly atStart: number;
  /** Added after the developed length. */
  readonly atEnd: number;
  /** How far the ends lie on each other, along the outline from where it starts. */
  readonly overlap: number;
  /** How much must lie flat or gently curved before the place where the outline starts. */
  readonly flatBefore: number;
  /** Length of the hem that stays open from where the outline starts, 0 if it is closed all along. */
  readonly openHem: number;
  /** Layers of metal where the ends lie on each other, hems apart. */
  readonly layers: number;
  /** Lines across the strip that belong to the seam. */
  readonly lines: readonly SeamLine[];
  /** What is cut away at the ends of a strip. */
  cuts(strip: SeamedStrip): readonly EndCut[];
  /** Where the allowance comes from. */
  readonly source: string;
}

/** A line across the strip, square to its edges. */
export interface SeamLine {
  readonly purpose: 'fold' | 'rivets';
  /** The end of the strip it is measured from. */
  readonly end: 'start' | 'end';
  readonly from: number;
}

/** What a seam must know of a strip to cut its ends. Millimetres. */
export interface SeamedStrip {
  /** Of the whole blank. */
  readonly length: number;
  readonly width: number;
  readonly edge: EdgeTreatment;
  readonly hemFace: HemFace;
}

/**
 * A piece cut away at an end of the strip. The polygon is given in strip
 * coordinates: x from the square end, y from the raw edge that is hemmed. It
 * starts and ends on the edge that is named, in ascending x.
 */
export interface EndCut {
  readonly edge: 'hemmed' | 'cutting';
  readonly polygon: readonly Point[];
}

/** A seam that a shop can choose by name. */
export interface SeamKind {
  readonly name: string;
  /** One line for help texts. */
  readonly summary: string;
  /** The lengths it needs, in order. */
  readonly sizes: readonly NamedLength[];
  /** Lengths that make a good example. */
  readonly example: NamedLengths;
  /** @throws StripError naming the length that is missing or not above 0. */
  make(sizes: NamedLengths): Seam;
}
