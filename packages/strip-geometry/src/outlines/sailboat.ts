import type { Point } from '../outline.js';
import { point } from '../point.js';
import { line } from '../segment.js';
import { arcOfRise } from './arc-of-rise.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_HEIGHT = 1.1;
const LEAST_HEIGHT = 0.8;
const MOST_HEIGHT = 1.6;

/** How far the sail's edges swell, as a part of the straight distance from end to end. */
const SWELL = 0.08;

/** A sailboat with its keel on the x axis, its bow to the right. */
export const sailboat = defineFamily({
  name: 'sailboat',
  summary: 'A hull with raked ends under one full sail.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'from stern to bow' },
    {
      name: 'high',
      kind: 'length',
      required: false,
      meaning: `from keel to masthead, ${USUAL_HEIGHT} of across without it`,
    },
  ],
  example: { across: 89 },
  path(sizes) {
    const across = sizes.number('across');
    const high = sizes.optional('high') ?? USUAL_HEIGHT * across;
    checkRange('high', high, LEAST_HEIGHT * across, MOST_HEIGHT * across, 'mm for this length');

    /** A point by parts of the length and of the height. */
    const at = (x: number, y: number): Point => point(x * across, y * high);
    const stern = at(0, 0.24);
    const bow = at(1, 0.24);
    const clew = at(0.1, 0.33);
    const tack = at(0.86, 0.33);
    const masthead = at(0.5, 1);
    return [
      line(stern, at(0.13, 0)),
      line(at(0.13, 0), at(0.76, 0)),
      line(at(0.76, 0), bow),
      line(bow, at(0.56, 0.24)),
      line(at(0.56, 0.24), at(0.56, 0.33)),
      line(at(0.56, 0.33), tack),
      arcOfRise(tack, masthead, SWELL),
      line(masthead, clew),
      line(clew, at(0.44, 0.33)),
      line(at(0.44, 0.33), at(0.44, 0.24)),
      line(at(0.44, 0.24), stern),
    ];
  },
});
