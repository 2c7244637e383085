import { point } from '../point.js';
import { arcBetween, line } from '../segment.js';
import { mirroredPath } from '../transform.js';
import { apex, towards } from './apex.js';
import { arcOfRise } from './arc-of-rise.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_WIDTH = 0.9;
const LEAST_WIDTH = 0.82;
const MOST_WIDTH = 1.05;

/** Parts of the height. */
const RIM = 0.12;
const CROWN_TOP = 0.88;
/** Parts of the width. */
const CLAPPER = 0.26;
const LIP_RADIUS = 0.05;
const CROWN_RADIUS = 0.27;
const FLARE_RADIUS = 0.55;
const KNOB = 0.2;

/** A bell, the lowest of its clapper at the origin. */
export const bell = defineFamily({
  name: 'bell',
  summary: 'A bell with a flared lip, its clapper below and a knob on top.',
  sizes: [
    {
      name: 'high',
      kind: 'length',
      required: true,
      meaning: 'from the clapper to the top of the knob',
    },
    {
      name: 'across',
      kind: 'length',
      required: false,
      meaning: `over the lip, ${USUAL_WIDTH} of high without it`,
    },
  ],
  example: { high: 85 },
  path(sizes) {
    const high = sizes.number('high');
    const across = sizes.optional('across') ?? USUAL_WIDTH * high;
    checkRange('across', across, LEAST_WIDTH * high, MOST_WIDTH * high, 'mm for this height');

    const rim = RIM * high;
    const clapper = (CLAPPER * across) / 2;
    const [left, right] = [point(-clapper, rim), point(clapper, rim)];

    const lip = LIP_RADIUS * across;
    const lipCentre = point(across / 2 - lip, rim + lip);
    const crown = CROWN_RADIUS * across;
    const crownCentre = point(0, CROWN_TOP * high - crown);
    // The flare touches lip and crown from outside.
    const flare = FLARE_RADIUS * across;
    const flareCentre = apex(crownCentre, crown + flare, lipCentre, lip + flare);
    const lipEnd = towards(lipCentre, flareCentre, lip);
    const crownStart = towards(crownCentre, flareCentre, crown);

    const knob = (KNOB * across) / 2;
    const knobFoot = point(knob, crownCentre.y + Math.sqrt(crown ** 2 - knob ** 2));
    const knobRise = (high - knobFoot.y) / (2 * knob);
    const underside = point(lipCentre.x, rim);
    const half = [
      line(right, underside),
      arcBetween(underside, lipEnd, lipCentre, 'anticlockwise'),
      arcBetween(lipEnd, crownStart, flareCentre, 'clockwise'),
      arcBetween(crownStart, knobFoot, crownCentre, 'anticlockwise'),
    ];
    return [
      arcOfRise(left, right, rim / (2 * clapper)),
      ...half,
      arcOfRise(knobFoot, point(-knob, knobFoot.y), knobRise),
      ...mirroredPath(half),
    ];
  },
});
