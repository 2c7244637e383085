/**
 * The outline of a cutter as data: straight lines, circular and elliptical
 * arcs and Bezier curves, end to end, closed, run anticlockwise (the inside
 * lies to the left). Millimetres, y upward, angles in radians.
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

/** A quadratic Bezier curve: a parabola that leaves `from` toward `control` and arrives from it. */
export interface QuadraticCurve {
  readonly kind: 'quadratic';
  readonly from: Point;
  readonly control: Point;
  readonly to: Point;
}

/** A cubic Bezier curve: leaves `from` toward `control1` and arrives at `to` from `control2`. */
export interface CubicCurve {
  readonly kind: 'cubic';
  readonly from: Point;
  readonly control1: Point;
  readonly control2: Point;
  readonly to: Point;
}

/**
 * Part of an ellipse: the centre plus (radiusX cos t, radiusY sin t) turned by
 * `rotation`, for t from `start` to `start + sweep`.
 */
export interface EllipticalArc {
  readonly kind: 'elliptical arc';
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Angle from the x axis to the ellipse's own first axis. */
  readonly rotation: number;
  readonly start: number;
  /** Positive anticlockwise, negative clockwise, never 0, at most a full turn. */
  readonly sweep: number;
}

export type Segment = Line | Arc | QuadraticCurve | CubicCurve | EllipticalArc;

export interface Outline {
  /** What the shop calls it, such as `heart`. */
  readonly name: string;
  /**
   * True for the edge of a hole, as in a ring: the cookie lies outside the line
   * and the cutter inside it.
   */
  readonly hole?: boolean;
  /** Closed: each segment starts where the one before it ends. */
  readonly segments: readonly Segment[];
}
