import { point } from '../point.js';
import { closedPolygon } from './closed-polygon.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_WIDTH = 0.64;
const LEAST_WIDTH = 0.3;
const MOST_WIDTH = 1;
const USUAL_SHAFT = 0.46;
const LEAST_SHAFT = 0.2;
const MOST_SHAFT = 0.8;

/** Length of the head, as a part of its width. */
const HEAD = 0.68;

/** An arrow to the right, the middle of its tail at the origin. */
export const arrow = defineFamily({
  name: 'arrow',
  summary: 'A straight shaft under a three-cornered head.',
  sizes: [
    { name: 'long', kind: 'length', required: true, meaning: 'from tail to tip' },
    {
      name: 'wide',
      kind: 'length',
      required: false,
      meaning: `over the head, ${USUAL_WIDTH} of long without it`,
    },
    {
      name: 'shaft',
      kind: 'length',
      required: false,
      meaning: `the width of the shaft, ${USUAL_SHAFT} of wide without it`,
    },
  ],
  example: { long: 95 },
  path(sizes) {
    const long = sizes.number('long');
    const wide = sizes.optional('wide') ?? USUAL_WIDTH * long;
    checkRange('wide', wide, LEAST_WIDTH * long, MOST_WIDTH * long, 'mm for this length');
    const shaft = sizes.optional('shaft') ?? USUAL_SHAFT * wide;
    checkRange('shaft', shaft, LEAST_SHAFT * wide, MOST_SHAFT * wide, 'mm for this head');

    const neck = long - HEAD * wide;
    return closedPolygon([
      point(0, -shaft / 2),
      point(neck, -shaft / 2),
      point(neck, -wide / 2),
      point(long, 0),
      point(neck, wide / 2),
      point(neck, shaft / 2),
      point(0, shaft / 2),
    ]);
  },
});
