import { toRadians } from '../angle.js';
import { turnBetween } from '../curves/turning.js';
import type { CurveRun } from '../develop.js';
import { parameterOf } from '../segment.js';
import type { FormedCurve, Strip } from '../strip.js';

/** A stretch of strip that is formed to about one radius. Millimetres and radians. */
export interface CurvePart {
  /** Number of the curve it belongs to, counted from 1 from the square end. */
  readonly curve: number;
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  /** Turned through, above 0. */
  readonly turn: number;
  readonly direction: 'in' | 'out';
}

/** Parts that a curve of changing radius is divided into, at most, and how short they get. */
const MOST_PARTS = 64;
const SHORTEST = 0.5;

/** The curves of a strip in parts of about one radius: an even curve is one part. */
export function curveParts({ curves, runs }: Strip): readonly CurvePart[] {
  const drawn = runs.filter((run) => run.kind === 'curve');
  return curves.flatMap((curve, index) => {
    const run = drawn[index];
    const count = Math.min(MOST_PARTS, Math.floor((curve.to - curve.from) / SHORTEST));
    return run === undefined || run.even || count <= 1
      ? [wholeCurve(curve, index + 1)]
      : unevenParts(run, index + 1, count);
  });
}

function wholeCurve({ from, to, radius, direction, angle }: FormedCurve, curve: number): CurvePart {
  return { curve, from, to, radius, turn: toRadians(angle), direction };
}

function unevenParts(
  { from, to, direction, shape }: CurveRun,
  curve: number,
  count: number,
): CurvePart[] {
  const { segment, start, end } = shape;
  const share = (piece: number, first: number, last: number) =>
    first + ((last - first) * piece) / count;
  return Array.from({ length: count }, (_, piece) => {
    const [begins, ends] = [share(piece, from, to), share(piece + 1, from, to)];
    const turn = Math.abs(
      turnBetween(
        segment,
        parameterOf(segment, share(piece, start, end)),
        parameterOf(segment, share(piece + 1, start, end)),
      ),
    );
    return { curve, from: begins, to: ends, radius: (ends - begins) / turn, turn, direction };
  });
}
