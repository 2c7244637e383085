import type { Point } from '../outline.js';

/** What is hard to make, or hard to use. */
export type WorkabilityCode =
  /** A flat too short for the pliers to hold. */
  | 'short flat'
  /** A bend or curve whose inside radius is less than the metal stands. */
  | 'sharp radius'
  /** A bend that closes the hem further than a notch can clear. */
  | 'hem in a sharp fold'
  /** A hem wider than a flat next to it is long. */
  | 'hem wider than flat'
  /** A hem that lies on the inside of a curve tighter than it is wide. */
  | 'hem wider than radius'
  /** A pointed corner, in which dough sticks. */
  | 'pointed corner'
  /** Two walls that face each other so near that dough sticks between them. */
  | 'narrow gap'
  /** Two marks nearer to each other than the rule can show. */
  | 'crowded marks'
  /** Marks from which the outline cannot be folded nearer to the drawing than one of them. */
  | 'coarse marks';

/** Where it is: on the strip, in millimetres from the square end, or between two points of the outline. */
export type WorkabilityPlace =
  | { readonly on: 'flat'; readonly from: number; readonly to: number }
  | { readonly on: 'bend'; readonly bend: number; readonly from: number; readonly to: number }
  | { readonly on: 'curve'; readonly curve: number; readonly from: number; readonly to: number }
  | { readonly on: 'outline'; readonly from: Point; readonly to: Point };

/** One thing to think about before cutting metal. */
export interface WorkabilityWarning {
  readonly code: WorkabilityCode;
  readonly place: WorkabilityPlace;
  /** What is found, in `unit`. */
  readonly measured: number;
  /** What it is compared with: at least this, or at most this, as the message says. */
  readonly limit: number;
  readonly unit: 'mm' | 'degrees';
  /** Where the limit comes from. */
  readonly source: string;
  readonly message: string;
}
