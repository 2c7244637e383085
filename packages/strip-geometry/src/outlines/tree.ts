import { OutlineError } from '../outline-error.js';
import { point } from '../point.js';
import { printNumber } from '../wording.js';
import { closedPolygon } from './closed-polygon.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_TIERS = 3;
const MOST_TIERS = 4;
const USUAL_WIDTH = 0.66;
const LEAST_WIDTH = 0.5;
const MOST_WIDTH = 1;

/** Parts of the height. */
const TRUNK_HEIGHT = 0.12;
/** Parts of the width. */
const TRUNK_WIDTH = 0.22;
/** How far each tier starts in from the tip above it, as a part of the reach of one tier. */
const INSET = 0.55;

/** A fir, the middle of its trunk's foot at the origin. */
export const tree = defineFamily({
  name: 'tree',
  summary: 'A fir: tiers of straight boughs on a short trunk.',
  sizes: [
    { name: 'high', kind: 'length', required: true, meaning: 'from the foot to the top' },
    {
      name: 'across',
      kind: 'length',
      required: false,
      meaning: `over the lowest tier, ${USUAL_WIDTH} of high without it`,
    },
    {
      name: 'tiers',
      kind: 'count',
      required: false,
      meaning: `how many, up to ${MOST_TIERS}; ${USUAL_TIERS} without it`,
    },
  ],
  example: { high: 100 },
  path(sizes) {
    const high = sizes.number('high');
    const across = sizes.optional('across') ?? USUAL_WIDTH * high;
    checkRange('across', across, LEAST_WIDTH * high, MOST_WIDTH * high, 'mm for this height');
    const tiers = sizes.optional('tiers') ?? USUAL_TIERS;
    if (tiers > MOST_TIERS) {
      const message = `"tiers" must be from 1 to ${MOST_TIERS}; got ${printNumber(tiers)}.`;
      throw new OutlineError('out of range', message, 'tiers');
    }

    // All boughs are parallel: each tier reaches as much further out as it comes further down.
    const reach = across / 2 / (tiers - (tiers - 1) * INSET);
    const inset = reach * INSET;
    const trunkTop = TRUNK_HEIGHT * high;
    const drop = (high - trunkTop) / tiers;

    const trunk = (TRUNK_WIDTH * across) / 2;
    const corners = [point(trunk, 0), point(trunk, trunkTop)];
    for (let tier = tiers; tier >= 1; tier--) {
      const tip = point(tier * reach - (tier - 1) * inset, high - tier * drop);
      corners.push(tip);
      if (tier > 1) {
        corners.push(point(tip.x - reach, tip.y + drop));
      }
    }
    const left = corners.map(({ x, y }) => point(-x, y)).reverse();
    return closedPolygon([...corners, point(0, high), ...left]);
  },
});
