import { FULL_TURN, toRadians } from '../angle.js';
import { OutlineError } from '../outline-error.js';
import { point, polar } from '../point.js';
import { arcBetween } from '../segment.js';
import { printNumber } from '../wording.js';
import { checkRange, defineFamily } from './define-family.js';

const MOST_PETALS = 16;
const LEAST_PETALS = 3;

/** Half the angle of the clefts between petals. */
const USUAL_CLEFT = toRadians(42);
const TIGHTEST_CLEFT = toRadians(30);
const WIDEST_CLEFT = toRadians(75);

/** A flower about the origin, with one petal at the top. */
export const flower = defineFamily({
  name: 'flower',
  summary: 'Round petals that meet in clefts.',
  sizes: [
    {
      name: 'petals',
      kind: 'count',
      required: true,
      meaning: `how many, from ${LEAST_PETALS} to ${MOST_PETALS}`,
    },
    {
      name: 'across',
      kind: 'length',
      required: true,
      meaning: 'the diameter of the circle round all petals',
    },
    {
      name: 'petal depth',
      kind: 'length',
      required: false,
      meaning: 'how far the clefts lie in from that circle',
    },
  ],
  example: { petals: 6, across: 80 },
  path(sizes) {
    const petals = sizes.number('petals');
    if (petals < LEAST_PETALS || petals > MOST_PETALS) {
      const message = `"petals" must be from ${LEAST_PETALS} to ${MOST_PETALS}; got ${printNumber(petals)}.`;
      throw new OutlineError('out of range', message, 'petals');
    }
    const reach = sizes.number('across') / 2;
    const depth = sizes.optional('petal depth') ?? depthAt(USUAL_CLEFT, petals, reach);
    checkRange(
      'petal depth',
      depth,
      depthAt(WIDEST_CLEFT, petals, reach),
      depthAt(TIGHTEST_CLEFT, petals, reach),
      `mm for ${petals} petals of this size`,
    );

    // A petal's circle touches the circle round all petals, and passes the clefts beside it.
    const cleft = reach - depth;
    const half = Math.PI / petals;
    const out = (reach ** 2 - cleft ** 2) / (2 * (reach - cleft * Math.cos(half)));
    const middle = point(0, 0);
    return Array.from({ length: petals }, (_, index) => {
      const angle = FULL_TURN * (0.25 + index / petals);
      const first = polar(middle, cleft, angle - half);
      const last = polar(middle, cleft, index === petals - 1 ? FULL_TURN / 4 - half : angle + half);
      return arcBetween(first, last, polar(middle, out, angle), 'anticlockwise');
    });
  },
});

/**
 * How deep the clefts lie where half their angle is `cleft`: the circle of a
 * petal then passes r cos(cleft) beside the middle line of the cleft, if r is
 * its radius, and its centre lies r short of `reach`.
 */
function depthAt(cleft: number, petals: number, reach: number): number {
  const half = Math.PI / petals;
  const radius = (reach * Math.sin(half)) / (Math.sin(half) + Math.cos(cleft));
  return reach - (reach - radius) * Math.cos(half) - radius * Math.sin(cleft);
}
