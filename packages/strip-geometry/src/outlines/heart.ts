import { toRadians } from '../angle.js';
import { point, polar } from '../point.js';
import { arcBetween, line } from '../segment.js';
import { mirroredPath } from '../transform.js';
import { checkRange, defineFamily } from './define-family.js';

/** Half the angle of the notch between the lobes. */
const HALF_CLEFT = toRadians(42);
const USUAL_HEIGHT = 0.92;
const LEAST_HEIGHT = 0.7;
const MOST_HEIGHT = 1.6;

/**
 * A heart that stands on its point at the origin: straight sides that run
 * tangent into two round lobes, which meet in a cleft.
 */
export const heart = defineFamily({
  name: 'heart',
  summary: 'A sharp point below, two round lobes and a cleft above.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'over both lobes' },
    {
      name: 'high',
      kind: 'length',
      required: false,
      meaning: `from the point to the top of the lobes, ${USUAL_HEIGHT} of across without it`,
    },
  ],
  example: { across: 100 },
  path(sizes) {
    const across = sizes.number('across');
    const high = sizes.optional('high') ?? USUAL_HEIGHT * across;
    checkRange('high', high, LEAST_HEIGHT * across, MOST_HEIGHT * across, 'mm for this width');

    // The lobe's circle crosses the middle line, which makes the cleft, and
    // just reaches half the width.
    const radius = across / 2 / (1 + Math.cos(HALF_CLEFT));
    const centre = point(radius * Math.cos(HALF_CLEFT), high - radius);
    const tip = point(0, 0);

    // The tangent from the tip touches the circle where the radius is square to it.
    const distance = Math.hypot(centre.x, centre.y);
    const fromCentreLine = Math.asin(radius / distance);
    const slope = Math.atan2(centre.y, centre.x) - fromCentreLine;
    const touch = polar(tip, distance * Math.cos(fromCentreLine), slope);
    const cleft = point(0, centre.y + radius * Math.sin(HALF_CLEFT));

    const right = [line(tip, touch), arcBetween(touch, cleft, centre, 'anticlockwise')];
    return [...right, ...mirroredPath(right)];
  },
});
