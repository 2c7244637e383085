import type { CubicCurve, Point, QuadraticCurve, Segment } from '../outline.js';
import { distance, dot, minus } from '../point.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { signChanges } from './polynomial-roots.js';

/**
 * A segment as a function of a parameter that runs from 0 at its start to 1 at
 * its end, with its first two derivatives. Millimetres.
 */
export interface ParametricCurve {
  at(parameter: number): Point;
  velocity(parameter: number): Point;
  acceleration(parameter: number): Point;
  /** Length of the velocity: millimetres travelled for each unit of the parameter. */
  speed(parameter: number): number;
  /**
   * No point between two parameters is farther than this from their chord: an
   * eighth of the greatest acceleration, times the square of the step (the
   * error bound of linear interpolation).
   */
  bulge(from: number, to: number): number;
  /**
   * Parameters between 0 and 1, ascending, among which are all where it is
   * slowest or fastest. At and beside these the speed can have a kink.
   */
  paceChanges(): readonly number[];
}

/** What is known of a segment, kept as long as the segment: sizing a strip asks many times. */
interface Known {
  readonly curve: ParametricCurve;
  readonly coefficients: Coefficients;
  length: number | undefined;
}

const known = new WeakMap<Segment, Known>();

function knownOf(segment: Segment): Known {
  let found = known.get(segment);
  if (found === undefined) {
    const coefficients = coefficientsOf(segment);
    found = { curve: functionOf(segment, coefficients), coefficients, length: undefined };
    known.set(segment, found);
  }
  return found;
}

/** The segment as a function of a parameter from 0 to 1. */
export function parametric(segment: Segment): ParametricCurve {
  return knownOf(segment).curve;
}

/** Length of the whole segment by `measure`, which is asked once. */
export function knownLength(segment: Segment, measure: (curve: ParametricCurve) => number): number {
  const found = knownOf(segment);
  found.length ??= measure(found.curve);
  return found.length;
}

function functionOf(segment: Segment, coefficients: Coefficients): ParametricCurve {
  switch (segment.kind) {
    case 'line':
    case 'quadratic':
    case 'cubic':
      return polynomial(coefficients);
    case 'arc': {
      const { from, centre, sweep } = segment;
      const { x, y } = minus(from, centre);
      const radius = Math.hypot(x, y);
      return ellipse(centre, radius, radius, 0, Math.atan2(y, x), sweep);
    }
    case 'elliptical arc': {
      const { centre, radiusX, radiusY, rotation, start, sweep } = segment;
      return ellipse(centre, radiusX, radiusY, rotation, start, sweep);
    }
  }
}

const ZERO: Point = { x: 0, y: 0 };

/** A Bezier curve as constant + linear u + square u^2 + cube u^3. */
export interface Coefficients {
  readonly constant: Point;
  readonly linear: Point;
  readonly square: Point;
  readonly cube: Point;
}

/**
 * The coefficients of a Bezier curve (Bernstein form multiplied out). A control
 * point that lies within the tolerance of its end counts as being there, so
 * that noise in a drawing gives the curve no direction.
 */
export function coefficients(curve: QuadraticCurve | CubicCurve): Coefficients {
  return knownOf(curve).coefficients;
}

function coefficientsOf(segment: Segment): Coefficients {
  const { from: constant, to } = segment;
  const total = minus(to, constant);
  switch (segment.kind) {
    case 'quadratic': {
      const { x, y } = minus(drawnIn(drawnIn(segment.control, constant), to), constant);
      const square = { x: total.x - 2 * x, y: total.y - 2 * y };
      return { constant, linear: { x: 2 * x, y: 2 * y }, square, cube: ZERO };
    }
    case 'cubic': {
      const first = minus(drawnIn(segment.control1, constant), constant);
      const second = minus(drawnIn(segment.control2, to), constant);
      return {
        constant,
        linear: { x: 3 * first.x, y: 3 * first.y },
        square: { x: 3 * (second.x - 2 * first.x), y: 3 * (second.y - 2 * first.y) },
        cube: {
          x: total.x - 3 * (second.x - first.x),
          y: total.y - 3 * (second.y - first.y),
        },
      };
    }
    default:
      return { constant, linear: total, square: ZERO, cube: ZERO };
  }
}

function drawnIn(control: Point, end: Point): Point {
  return distance(control, end) <= LENGTH_TOLERANCE ? end : control;
}

function polynomial({ constant, linear, square, cube }: Coefficients): ParametricCurve {
  return {
    at: (u) => ({
      x: constant.x + u * (linear.x + u * (square.x + u * cube.x)),
      y: constant.y + u * (linear.y + u * (square.y + u * cube.y)),
    }),
    velocity: (u) => ({
      x: linear.x + u * (2 * square.x + 3 * u * cube.x),
      y: linear.y + u * (2 * square.y + 3 * u * cube.y),
    }),
    acceleration: (u) => ({
      x: 2 * square.x + 6 * u * cube.x,
      y: 2 * square.y + 6 * u * cube.y,
    }),
    speed(u) {
      const x = linear.x + u * (2 * square.x + 3 * u * cube.x);
      const y = linear.y + u * (2 * square.y + 3 * u * cube.y);
      return Math.sqrt(x * x + y * y);
    },
    bulge(from, to) {
      // The acceleration changes evenly, so it is greatest at an end.
      const first = Math.hypot(2 * square.x + 6 * from * cube.x, 2 * square.y + 6 * from * cube.y);
      const last = Math.hypot(2 * square.x + 6 * to * cube.x, 2 * square.y + 6 * to * cube.y);
      return ((to - from) ** 2 * Math.max(first, last)) / 8;
    },
    paceChanges() {
      // Where the derivative of the squared speed changes sign.
      const derivative = [
        dot(linear, square),
        2 * dot(square, square) + 3 * dot(linear, cube),
        9 * dot(square, cube),
        9 * dot(cube, cube),
      ];
      return signChanges(derivative, 0, 1);
    },
  };
}

function ellipse(
  centre: Point,
  radiusX: number,
  radiusY: number,
  rotation: number,
  start: number,
  sweep: number,
): ParametricCurve {
  const cosine = Math.cos(rotation);
  const sine = Math.sin(rotation);
  const turned = (x: number, y: number): Point => ({
    x: cosine * x - sine * y,
    y: sine * x + cosine * y,
  });
  return {
    at(u) {
      const t = start + u * sweep;
      const { x, y } = turned(radiusX * Math.cos(t), radiusY * Math.sin(t));
      return { x: centre.x + x, y: centre.y + y };
    },
    velocity(u) {
      const t = start + u * sweep;
      return turned(-sweep * radiusX * Math.sin(t), sweep * radiusY * Math.cos(t));
    },
    acceleration(u) {
      const t = start + u * sweep;
      const square = sweep * sweep;
      return turned(-square * radiusX * Math.cos(t), -square * radiusY * Math.sin(t));
    },
    speed(u) {
      const t = start + u * sweep;
      const x = radiusX * Math.sin(t);
      const y = radiusY * Math.cos(t);
      return Math.abs(sweep) * Math.sqrt(x * x + y * y);
    },
    bulge: (from, to) => ((sweep * (to - from)) ** 2 * Math.max(radiusX, radiusY)) / 8,
    paceChanges: () => endsOfAxes(start, sweep),
  };
}

/** Parameters between 0 and 1, ascending, at which an elliptical arc passes the ends of its axes. */
export function endsOfAxes(start: number, sweep: number): number[] {
  const quarter = Math.PI / 2;
  const [first, last] = sweep > 0 ? [start, start + sweep] : [start + sweep, start];
  const ends: number[] = [];
  for (let count = Math.ceil(first / quarter); count * quarter <= last; count++) {
    ends.push((count * quarter - start) / sweep);
  }
  const inside = ends.filter((parameter) => parameter > 0 && parameter < 1);
  return sweep > 0 ? inside : inside.reverse();
}
