import { turnBetween } from '../curves/turning.js';
import type { CurveRun, Run } from '../develop.js';
import { parameterOf } from '../segment.js';
import { ANGLE_TOLERANCE } from '../tolerance.js';

/** Halvings of a curve's length, to below a millionth of a millimetre. */
const HALVINGS = 40;

/** The two parts of a flat or a curve before and after a place inside it, millimetres along the strip. */
export function dividedRun(run: Run, at: number): readonly [Run, Run] {
  if (run.kind !== 'curve') {
    return [
      { ...run, to: at },
      { ...run, from: at },
    ];
  }
  const { segment, start, end } = run.shape;
  const { middle, share } = placeOnShape(run, at - run.from);
  const angle = share * run.angle;
  return [
    { ...run, to: at, angle, shape: { segment, start, end: middle } },
    { ...run, from: at, angle: run.angle - angle, shape: { segment, start: middle, end } },
  ];
}

/**
 * Where along its drawn segment a curve has taken up so much of the strip, and
 * the share of its turn up to there: a part of length L that turns through A takes
 * L + d A, with one d all along the curve (see `develop`).
 */
function placeOnShape(run: CurveRun, taken: number): { middle: number; share: number } {
  const { segment, start, end } = run.shape;
  const whole = run.to - run.from;
  const first = parameterOf(segment, start);
  const turnUpTo = (along: number) =>
    Math.abs(turnBetween(segment, first, parameterOf(segment, along)));
  const turn = turnUpTo(end);
  if (run.even || turn <= ANGLE_TOLERANCE) {
    const share = taken / whole;
    return { middle: start + share * (end - start), share };
  }
  const outside = (whole - (end - start)) / turn;
  let [low, high] = [start, end];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (middle - start + outside * turnUpTo(middle) < taken) {
      low = middle;
    } else {
      high = middle;
    }
  }
  const middle = (low + high) / 2;
  return { middle, share: turnUpTo(middle) / turn };
}
