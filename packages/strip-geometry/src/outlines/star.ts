import { FULL_TURN, toRadians } from '../angle.js';
import { OutlineError } from '../outline-error.js';
import { point, polar } from '../point.js';
import { printNumber } from '../wording.js';
import { closedPolygon } from './closed-polygon.js';
import { type CheckedSizes, defineFamily } from './define-family.js';

/** A star about the origin, with one tip at the top. */
export const star = defineFamily({
  name: 'star',
  summary:
    'A star of straight edges; without a ratio or angle, one point in line with the next but one.',
  sizes: [
    { name: 'points', kind: 'count', required: true, meaning: 'how many tips, at least 3' },
    {
      name: 'across',
      kind: 'length',
      required: true,
      meaning: 'the diameter of the circle through the tips',
    },
    {
      name: 'inner ratio',
      kind: 'ratio',
      required: false,
      meaning: 'the circle through the inner corners, as a part of the one through the tips',
    },
    {
      name: 'tip angle',
      kind: 'angle',
      required: false,
      meaning: 'the angle between the edges of a tip',
    },
  ],
  example: { points: 5, across: 80 },
  path(sizes) {
    const points = sizes.number('points');
    if (points < 3) {
      throw new OutlineError(
        'out of range',
        `"points" must be at least 3; got ${points}.`,
        'points',
      );
    }
    const radius = sizes.number('across') / 2;
    const inner = radius * innerRatio(sizes, points);
    const centre = point(0, 0);
    const corners = Array.from({ length: 2 * points }, (_, index) =>
      polar(centre, index % 2 === 0 ? radius : inner, FULL_TURN * (0.25 + index / (2 * points))),
    );
    return closedPolygon(corners);
  },
});

function innerRatio(sizes: CheckedSizes, points: number): number {
  const ratio = sizes.optional('inner ratio');
  const tipAngle = sizes.optional('tip angle');
  if (ratio !== undefined && tipAngle !== undefined) {
    const message = 'A star takes "inner ratio" or "tip angle"; got both.';
    throw new OutlineError('contradictory sizes', message, 'tip angle');
  }
  const step = Math.PI / points;
  if (ratio !== undefined) {
    checkBelow('inner ratio', ratio, Math.cos(step), points);
    return ratio;
  }
  if (tipAngle !== undefined) {
    checkBelow('tip angle', tipAngle, 180 - 360 / points, points);
    const slope = Math.tan(toRadians(tipAngle) / 2);
    return slope / (Math.sin(step) + slope * Math.cos(step));
  }
  if (points < 5) {
    const message =
      `A star of ${points} points needs "inner ratio" or "tip angle"; only from 5 points on do ` +
      'the edges of a tip line up with those of the next but one.';
    throw new OutlineError('missing size', message, 'inner ratio');
  }
  // Where the edges run on straight from tip to next but one: cos(2 step) / cos(step).
  return Math.cos(2 * step) / Math.cos(step);
}

/** From this limit on, the inner corners are not inner: the outline is a plain polygon. */
function checkBelow(name: string, value: number, limit: number, points: number): void {
  if (value >= limit) {
    const message =
      `"${name}" must be below ${printNumber(limit)} for a star of ${points} points, whose inner ` +
      `corners would otherwise not turn inward; got ${printNumber(value)}.`;
    throw new OutlineError('out of range', message, name);
  }
}
