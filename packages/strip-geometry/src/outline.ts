/**
 * The outline of a cutter as data: straight lines and circular arcs, end to
 * end, closed, run anticlockwise (the inside lies to the left). Millimetres,
 * y upward, angles in radians.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

export interface Arc {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  /** Angle swept from `from` to `to`: positive anticlockwise, negative clockwise, never 0. */
  readonly sweep: number;
}

export type Segment = Line | Arc;

export interface Outline {
  /** What the shop calls it, such as `heart`. */
  readonly name: string;
  /** Closed: each segment starts where the one before it ends. */
  readonly segments: readonly Segment[];
}
