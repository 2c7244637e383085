import { point } from '../point.js';
import { arcBetween, line, reversed } from '../segment.js';
import { arcOfRise } from './arc-of-rise.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_HEIGHT = 0.5;
const LEAST_HEIGHT = 0.38;
const MOST_HEIGHT = 0.62;

/** Parts of the length. */
const NOSE_RADIUS = 0.1;
const HIGHEST_AT = 0.36;
/** Parts of the height. */
const TAIL_ROOT = 0.26;
const TAIL = 0.8;
/** How far the end of the tail is hollowed, as a part of its height. */
const FORK = 0.14;

/** A fish that swims to the left, its nose at the origin. */
export const fish = defineFamily({
  name: 'fish',
  summary: 'A round-nosed fish with a spread tail.',
  sizes: [
    { name: 'long', kind: 'length', required: true, meaning: 'from nose to tail' },
    {
      name: 'high',
      kind: 'length',
      required: false,
      meaning: `over the body, ${USUAL_HEIGHT} of long without it`,
    },
  ],
  example: { long: 105 },
  path(sizes) {
    const long = sizes.number('long');
    const high = sizes.optional('high') ?? USUAL_HEIGHT * long;
    checkRange('high', high, LEAST_HEIGHT * long, MOST_HEIGHT * long, 'mm for this length');

    // The back's circle holds the nose's and touches it from inside.
    const nose = NOSE_RADIUS * long;
    const noseCentre = point(nose, 0);
    const middle = HIGHEST_AT * long;
    const half = high / 2;
    const back = ((middle - nose) ** 2 + half ** 2 - nose ** 2) / (2 * (half - nose));
    const above = point(middle, back - half);
    const below = point(middle, half - back);
    const share = nose / (back - nose);
    const touch = point(nose + (nose - middle) * share, (back - half) * share);

    const root = (TAIL_ROOT * high) / 2;
    const rootX = middle + Math.sqrt(back ** 2 - (root + back - half) ** 2);
    const tail = (TAIL * high) / 2;
    const [upperRoot, lowerRoot] = [point(rootX, root), point(rootX, -root)];
    const [upperTip, lowerTip] = [point(long, tail), point(long, -tail)];
    return [
      arcBetween(point(touch.x, -touch.y), lowerRoot, above, 'anticlockwise'),
      line(lowerRoot, lowerTip),
      reversed(arcOfRise(upperTip, lowerTip, FORK)),
      line(upperTip, upperRoot),
      arcBetween(upperRoot, touch, below, 'anticlockwise'),
      arcBetween(touch, point(touch.x, -touch.y), noseCentre, 'anticlockwise'),
    ];
  },
});
