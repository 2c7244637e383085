import { point } from '../point.js';
import { arcBetween, line } from '../segment.js';
import { mirroredPath } from '../transform.js';
import { apex, towards } from './apex.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_WIDTH = 0.56;
const LEAST_WIDTH = 0.4;
const MOST_WIDTH = 0.8;

/** Parts of the height. */
const STEM_LENGTH = 0.13;
const STEM_WIDTH = 0.105;
const WIDEST_AT = 0.42;
/** Radius of the hollow sides of the tip. */
const HOLLOW = 0.5;
/** Roundness of the upper sides, as a part of the radius that would bring them to the tip. */
const FULLNESS = 0.84;

/** A leaf that stands on its stem at the origin, its tip upward. */
export const leaf = defineFamily({
  name: 'leaf',
  summary: 'A plain pointed leaf, widest below the middle, with a short stem.',
  sizes: [
    {
      name: 'high',
      kind: 'length',
      required: true,
      meaning: 'from the end of the stem to the tip',
    },
    {
      name: 'across',
      kind: 'length',
      required: false,
      meaning: `at the widest, ${USUAL_WIDTH} of high without it`,
    },
  ],
  example: { high: 95 },
  path(sizes) {
    const high = sizes.number('high');
    const across = sizes.optional('across') ?? USUAL_WIDTH * high;
    checkRange('across', across, LEAST_WIDTH * high, MOST_WIDTH * high, 'mm for this height');

    const stem = (STEM_WIDTH * high) / 2;
    const [foot, neck] = [point(stem, 0), point(stem, STEM_LENGTH * high)];
    const side = point(across / 2, WIDEST_AT * high);
    const tip = point(0, high);
    // Both sides run straight up where the leaf is widest, so their centres are level with it.
    const below = radiusThrough(side.x - neck.x, side.y - neck.y);
    const above = FULLNESS * radiusThrough(side.x, tip.y - side.y);
    const aboveCentre = point(side.x - above, side.y);
    // The hollow circle passes through the tip and touches the side from outside.
    const hollow = HOLLOW * high;
    const hollowCentre = apex(tip, hollow, aboveCentre, hollow + above);
    const touch = towards(aboveCentre, hollowCentre, above);
    const right = [
      line(foot, neck),
      arcBetween(neck, side, point(side.x - below, side.y), 'anticlockwise'),
      arcBetween(side, touch, aboveCentre, 'anticlockwise'),
      arcBetween(touch, tip, hollowCentre, 'clockwise'),
    ];
    return [...right, ...mirroredPath(right), line(point(-stem, 0), foot)];
  },
});

/** Radius of an arc that ends `back` beside and `along` further than its tangent point. */
function radiusThrough(back: number, along: number): number {
  return (back ** 2 + along ** 2) / (2 * back);
}
