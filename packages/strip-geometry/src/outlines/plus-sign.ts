import { point } from '../point.js';
import { closedPolygon } from './closed-polygon.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_ARM = 0.36;
const LEAST_ARM = 0.15;
const MOST_ARM = 0.6;

/** A plus sign about the origin. */
export const plusSign = defineFamily({
  name: 'plus sign',
  summary: 'Four equal arms at right angles.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'from arm to opposite arm' },
    {
      name: 'arm',
      kind: 'length',
      required: false,
      meaning: `the width of an arm, ${USUAL_ARM} of across without it`,
    },
  ],
  example: { across: 80 },
  path(sizes) {
    const across = sizes.number('across');
    const arm = sizes.optional('arm') ?? USUAL_ARM * across;
    checkRange('arm', arm, LEAST_ARM * across, MOST_ARM * across, 'mm for this size');
    const [out, side] = [across / 2, arm / 2];
    const quarter = [point(side, -out), point(side, -side), point(out, -side)];
    let corners = quarter;
    const all = [];
    for (let turn = 0; turn < 4; turn++) {
      all.push(...corners);
      corners = corners.map(({ x, y }) => point(0 - y, x));
    }
    return closedPolygon(all);
  },
});
