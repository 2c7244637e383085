import { point } from '../point.js';
import { arcBetween } from '../segment.js';
import { mirroredPath } from '../transform.js';
import { apex, towards } from './apex.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_WIDTH = 0.62;
const LEAST_WIDTH = 0.5;
const MOST_WIDTH = 0.8;

/** Radius of the hollow sides, as a part of the height. */
const HOLLOW = 2.2;

/** A drop that stands on its round end at the origin, its point upward. */
export const teardrop = defineFamily({
  name: 'teardrop',
  summary: 'A drop: round below, with slightly hollow sides that meet in a point.',
  sizes: [
    {
      name: 'high',
      kind: 'length',
      required: true,
      meaning: 'from the point to the end of the round',
    },
    {
      name: 'across',
      kind: 'length',
      required: false,
      meaning: `the diameter of the round, ${USUAL_WIDTH} of high without it`,
    },
  ],
  example: { high: 90 },
  path(sizes) {
    const high = sizes.number('high');
    const across = sizes.optional('across') ?? USUAL_WIDTH * high;
    checkRange('across', across, LEAST_WIDTH * high, MOST_WIDTH * high, 'mm for this height');

    const round = across / 2;
    const hollow = HOLLOW * high;
    const [middle, tip] = [point(0, round), point(0, high)];
    // The hollow circle passes through the tip and touches the round from outside.
    const centre = apex(tip, hollow, middle, hollow + round);
    const touch = towards(middle, centre, round);
    const right = arcBetween(touch, tip, centre, 'clockwise');
    return [
      arcBetween(point(-touch.x, touch.y), touch, middle, 'anticlockwise'),
      right,
      ...mirroredPath([right]),
    ];
  },
});
