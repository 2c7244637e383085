import type { Point } from '../outline.js';
import { point } from '../point.js';
import { closedPolygon } from './closed-polygon.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_HEIGHT = 1;
const LEAST_HEIGHT = 0.75;
const MOST_HEIGHT = 1.3;

/** Parts of the width. */
const OVERHANG = 0.11;
const CHIMNEY_MIDDLE = 0.8;
/** Of the flat between chimney and ridge, so that no wedge is left there for dough to stick in. */
const LEDGE = 0.08;
const LEAST_CHIMNEY = 0.1;
const MOST_CHIMNEY = 0.2;
/** Parts of the height. */
const EAVES = 0.5;
const CHIMNEY_TOP = 0.97;

/** A gabled house, the lower end of its left eave above the origin. */
export const house = defineFamily({
  name: 'house',
  summary: 'A gable end with eaves, and a chimney if one is asked for.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'over the eaves' },
    {
      name: 'high',
      kind: 'length',
      required: false,
      meaning: `from the ground to the ridge, ${USUAL_HEIGHT} of across without it`,
    },
    {
      name: 'chimney',
      kind: 'length',
      required: false,
      meaning: 'the width of the chimney; none without it',
    },
  ],
  example: { across: 90, chimney: 14 },
  path(sizes) {
    const across = sizes.number('across');
    const high = sizes.optional('high') ?? USUAL_HEIGHT * across;
    checkRange('high', high, LEAST_HEIGHT * across, MOST_HEIGHT * across, 'mm for this width');

    /** A point by parts of the width and of the height. */
    const at = (x: number, y: number): Point => point(x * across, y * high);
    const onRoof = (x: number): Point => at(x, EAVES + (1 - EAVES) * 2 * (1 - x));
    const chimney = sizes.optional('chimney');
    const stack: Point[] = [];
    if (chimney !== undefined) {
      const [least, most] = [LEAST_CHIMNEY * across, MOST_CHIMNEY * across];
      checkRange('chimney', chimney, least, most, 'mm for this width');
      const half = chimney / across / 2;
      const [left, right] = [CHIMNEY_MIDDLE - half, CHIMNEY_MIDDLE + half];
      const ledge = onRoof(left - LEDGE);
      stack.push(onRoof(right), at(right, CHIMNEY_TOP), at(left, CHIMNEY_TOP));
      stack.push(point(left * across, ledge.y), ledge);
    }
    return closedPolygon([
      at(OVERHANG, 0),
      at(1 - OVERHANG, 0),
      at(1 - OVERHANG, EAVES),
      at(1, EAVES),
      ...stack,
      at(0.5, 1),
      at(0, EAVES),
      at(OVERHANG, EAVES),
    ]);
  },
});
