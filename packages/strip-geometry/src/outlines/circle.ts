import { FULL_TURN } from '../angle.js';
import { point } from '../point.js';
import { arc } from '../segment.js';
import { defineFamily } from './define-family.js';

/** A circle about the origin. */
export const circle = defineFamily({
  name: 'circle',
  summary: 'A round cutter, by its diameter.',
  sizes: [{ name: 'across', kind: 'length', required: true, meaning: 'the diameter' }],
  example: { across: 70 },
  path(sizes) {
    const start = point(sizes.number('across') / 2, 0);
    const round = arc(start, point(0, 0), FULL_TURN);
    // Ends where it starts, to the last digit.
    return [{ ...round, to: start }];
  },
});
