import { FULL_TURN } from '../angle.js';
import { point } from '../point.js';
import { ellipticalArc } from '../segment.js';
import { checkRange, defineFamily } from './define-family.js';

const LEAST_HEIGHT = 0.25;
const MOST_HEIGHT = 4;

/** An ellipse about the origin. */
export const ellipse = defineFamily({
  name: 'ellipse',
  summary: 'An ellipse, by its two diameters.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'the diameter from side to side' },
    { name: 'high', kind: 'length', required: true, meaning: 'the diameter from bottom to top' },
  ],
  example: { across: 90, high: 60 },
  path(sizes) {
    const across = sizes.number('across');
    const high = sizes.number('high');
    checkRange('high', high, LEAST_HEIGHT * across, MOST_HEIGHT * across, 'mm for this width');
    const start = point(across / 2, 0);
    const round = ellipticalArc({
      centre: point(0, 0),
      radiusX: across / 2,
      radiusY: high / 2,
      rotation: 0,
      start: 0,
      sweep: FULL_TURN,
    });
    // Ends where it starts, to the last digit.
    return [{ ...round, from: start, to: start }];
  },
});
