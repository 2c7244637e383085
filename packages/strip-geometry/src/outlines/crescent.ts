import { toRadians } from '../angle.js';
import { point, polar } from '../point.js';
import { arcBetween } from '../segment.js';
import { checkRange, defineFamily } from './define-family.js';

/** Angle from the middle of the open side to each horn, seen from the outer circle's centre. */
const HORN = toRadians(48);
const LEAST_THICKNESS = 0.1;
const MOST_THICKNESS = 0.6;

/** A crescent moon, open to the right, its outer circle about the origin. */
export const crescent = defineFamily({
  name: 'crescent',
  summary: 'A new moon: two arcs that meet in two horns.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'the diameter of the outer curve' },
    { name: 'thick', kind: 'length', required: true, meaning: 'at the thickest, in the middle' },
  ],
  example: { across: 89, thick: 35 },
  path(sizes) {
    const across = sizes.number('across');
    const thick = sizes.number('thick');
    checkRange(
      'thick',
      thick,
      LEAST_THICKNESS * across,
      MOST_THICKNESS * across,
      'mm, a tenth to six tenths of "across"',
    );
    const radius = across / 2;
    const lower = polar(point(0, 0), radius, -HORN);
    const upper = polar(point(0, 0), radius, HORN);

    // The inner circle passes both horns and the middle of the inner edge.
    const inner = thick - radius;
    const centre = point((radius ** 2 - inner ** 2) / (2 * (upper.x - inner)), 0);
    return [
      arcBetween(upper, lower, point(0, 0), 'anticlockwise'),
      arcBetween(lower, upper, centre, 'clockwise'),
    ];
  },
});
