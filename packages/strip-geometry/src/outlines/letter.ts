import { OutlineError } from '../outline-error.js';
import { scaled } from '../transform.js';
import { defineFamily } from './define-family.js';
import { capitals } from './letters/capitals.js';
import { STROKE } from './letters/stroke.js';

/** A capital letter that stands on the x axis, its left edge on the y axis. */
export const letter = defineFamily({
  name: 'letter',
  summary: 'A plain capital; A, B, D, O, P, Q and R without the holes in them.',
  sizes: [
    { name: 'letter', kind: 'letter', required: true, meaning: 'a capital, A to Z' },
    {
      name: 'high',
      kind: 'length',
      required: true,
      meaning: `from foot to top; the strokes are ${STROKE} of that wide`,
    },
  ],
  example: { letter: 'K', high: 80 },
  path(sizes) {
    const name = sizes.letter('letter');
    const draw = capitals[name];
    if (draw === undefined) {
      const message = `"letter" must be a capital from A to Z; got ${name}.`;
      throw new OutlineError('out of range', message, 'letter');
    }
    return scaled({ name, segments: draw() }, sizes.number('high')).segments;
  },
});
