import type { Segment } from '../outline.js';
import { dot, turnFrom } from '../point.js';
import { axialParameter } from './curvature.js';
import { directionAt } from './heading.js';
import { type ParametricCurve, parametric } from './parametric-curve.js';

/**
 * Radians turned through from one parameter to another, positive to the left,
 * counted on past a half turn. At a cusp, where a curve stops and turns back,
 * the way it turns is the way it bends.
 *
 * The velocity of a cubic is a parabola about the standstill point. The line
 * through that point along the parabola's axis meets it once; on either side of
 * the meeting the velocity stays in one half plane, so that its turn is the
 * plain angle between its ends. An ellipse's velocity is an ellipse about the
 * standstill point.
 */
export function turnBetween(segment: Segment, from: number, to: number): number {
  return from <= to ? turnForward(segment, from, to) : -turnForward(segment, to, from);
}

function turnForward(segment: Segment, from: number, to: number): number {
  switch (segment.kind) {
    case 'line':
      return 0;
    case 'arc':
      return segment.sweep * (to - from);
    case 'elliptical arc': {
      const { radiusX, radiusY, start, sweep } = segment;
      const heading = (parameter: number) =>
        normalAngle(start + parameter * sweep, radiusX, radiusY);
      return heading(to) - heading(from);
    }
    default: {
      const curve = parametric(segment);
      const middle = axialParameter(segment);
      const isInside = middle - from > AT_END && to - middle > AT_END;
      const stops = isInside ? [from, middle, to] : [from, to];
      let sum = 0;
      for (let index = 1; index < stops.length; index++) {
        const [first, last] = [stops[index - 1] ?? from, stops[index] ?? to];
        sum += turnFrom(directionAt(curve, first, 'after'), directionAt(curve, last, 'before'));
      }
      const isCusp = stops.length > 2 && turnsBack(curve, middle);
      return isCusp ? sum + Math.sign(sum) * Math.PI : sum;
    }
  }
}

/** Parameters that differ by no more are one: there an end can be told from a cusp no longer. */
const AT_END = 1e-9;

function turnsBack(curve: ParametricCurve, parameter: number): boolean {
  const before = directionAt(curve, parameter, 'before');
  return dot(before, directionAt(curve, parameter, 'after')) < 0;
}

/**
 * Direction of the outward normal of an ellipse at the angle t of its drawing,
 * unwound: equal to t at every quarter turn. Its heading is square to it.
 */
function normalAngle(t: number, radiusX: number, radiusY: number): number {
  const [sine, cosine] = [Math.sin(t), Math.cos(t)];
  // The normal is (cos t / radiusX, sin t / radiusY); its angle from t, less than a quarter turn.
  const gained = Math.atan2(
    (radiusX - radiusY) * sine * cosine,
    radiusY * cosine * cosine + radiusX * sine * sine,
  );
  return t + gained;
}
