import { FULL_TURN } from '../angle.js';
import type { EllipticalArc, Point, Segment } from '../outline.js';
import { minus, polar } from '../point.js';
import { radiusOf } from '../segment.js';
import { coefficients, parametric } from './parametric-curve.js';
import { quadraticRoots } from './polynomial-roots.js';

/** The points of a segment among which are those farthest left, right, up and down. */
export function extremes(segment: Segment): Point[] {
  const { from, to } = segment;
  switch (segment.kind) {
    case 'line':
      return [from, to];
    case 'arc': {
      const { centre, sweep } = segment;
      const { x, y } = minus(from, centre);
      const start = Math.atan2(y, x);
      const passed = QUARTERS.filter((angle) => passes(start, sweep, angle));
      return [from, to, ...passed.map((angle) => polar(centre, radiusOf(segment), angle))];
    }
    case 'elliptical arc':
      return [from, to, ...uprightTangents(segment).map(parametric(segment).at)];
    default: {
      const { linear, square, cube } = coefficients(segment);
      const level = [
        ...quadraticRoots(3 * cube.x, 2 * square.x, linear.x),
        ...quadraticRoots(3 * cube.y, 2 * square.y, linear.y),
      ].filter((parameter) => parameter > 0 && parameter < 1);
      return [from, to, ...level.map(parametric(segment).at)];
    }
  }
}

const QUARTERS = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);

/** Whether a sweep from `start` passes the direction `angle`. */
function passes(start: number, sweep: number, angle: number): boolean {
  return sweptTo(start, sweep, angle) <= Math.abs(sweep);
}

/** How far one sweeps from `start` to `angle`, from 0 up to a full turn. */
function sweptTo(start: number, sweep: number, angle: number): number {
  const swept = Math.sign(sweep) * (angle - start);
  return ((swept % FULL_TURN) + FULL_TURN) % FULL_TURN;
}

/** Parameters at which an elliptical arc runs straight along either axis of the page. */
function uprightTangents({ radiusX, radiusY, rotation, start, sweep }: EllipticalArc): number[] {
  const farthestAcross = Math.atan2(-radiusY * Math.sin(rotation), radiusX * Math.cos(rotation));
  const farthestUp = Math.atan2(radiusY * Math.cos(rotation), radiusX * Math.sin(rotation));
  return [farthestAcross, farthestAcross + Math.PI, farthestUp, farthestUp + Math.PI]
    .filter((angle) => passes(start, sweep, angle))
    .map((angle) => sweptTo(start, sweep, angle) / Math.abs(sweep));
}
