import type { Point } from '../outline.js';
import { point } from '../point.js';
import { closedPolygon } from './closed-polygon.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_HEIGHT = 1;
const LEAST_HEIGHT = 0.75;
const MOST_HEIGHT = 1.3;

/** Parts of the width. */
const OVERHANG = 0.08;
const CHIMNEY_LEFT = 0.68;
const CHIMNEY_RIGHT = 0.83;
/** Parts of the height. */
const EAVES = 0.5;
const CHIMNEY_TOP = 0.97;

/** A gabled house, the lower end of its left eave above the origin. */
export const house = defineFamily({
  name: 'house',
  summary: 'A gable end with eaves and a chimney.',
  sizes: [
    { name: 'across', kind: 'length', required: true, meaning: 'over the eaves' },
    {
      name: 'high',
      kind: 'length',
      required: false,
      meaning: `from the ground to the ridge, ${USUAL_HEIGHT} of across without it`,
    },
  ],
  example: { across: 85 },
  path(sizes) {
    const across = sizes.number('across');
    const high = sizes.optional('high') ?? USUAL_HEIGHT * across;
    checkRange('high', high, LEAST_HEIGHT * across, MOST_HEIGHT * across, 'mm for this width');

    /** A point by parts of the width and of the height. */
    const at = (x: number, y: number): Point => point(x * across, y * high);
    const onRoof = (x: number): Point => at(x, EAVES + (1 - EAVES) * 2 * (1 - x));
    return closedPolygon([
      at(OVERHANG, 0),
      at(1 - OVERHANG, 0),
      at(1 - OVERHANG, EAVES),
      at(1, EAVES),
      onRoof(CHIMNEY_RIGHT),
      at(CHIMNEY_RIGHT, CHIMNEY_TOP),
      at(CHIMNEY_LEFT, CHIMNEY_TOP),
      onRoof(CHIMNEY_LEFT),
      at(0.5, 1),
      at(0, EAVES),
      at(OVERHANG, EAVES),
    ]);
  },
});
