import { point } from '../point.js';
import { arcBetween, line } from '../segment.js';
import { checkRange, defineFamily } from './define-family.js';

const LEAST_WIDTH = 0.1;
const MOST_WIDTH = 0.95;

/** A stadium with its lower straight side on the x axis, its long way flat. */
export const oval = defineFamily({
  name: 'oval',
  summary: 'Two straight sides with a half circle at each end.',
  sizes: [
    { name: 'long', kind: 'length', required: true, meaning: 'from end to end' },
    { name: 'wide', kind: 'length', required: true, meaning: 'from side to side' },
  ],
  example: { long: 90, wide: 50 },
  path(sizes) {
    const long = sizes.number('long');
    const wide = sizes.number('wide');
    checkRange(
      'wide',
      wide,
      LEAST_WIDTH * long,
      MOST_WIDTH * long,
      'mm for this length (a circle is a family of its own)',
    );
    const radius = wide / 2;
    const [left, right] = [radius, long - radius];
    return [
      line(point(left, 0), point(right, 0)),
      arcBetween(point(right, 0), point(right, wide), point(right, radius), 'anticlockwise'),
      line(point(right, wide), point(left, wide)),
      arcBetween(point(left, wide), point(left, 0), point(left, radius), 'anticlockwise'),
    ];
  },
});
