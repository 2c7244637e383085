import { point } from '../point.js';
import { arcBetween, line } from '../segment.js';
import { mirroredPath } from '../transform.js';
import { checkRange, defineFamily } from './define-family.js';

const USUAL_WIDTH = 0.74;
/** Below this the cap would swell past its rim. */
const LEAST_WIDTH = 0.6;
const MOST_WIDTH = 1;

/** Parts of the height. */
const CAP_UNDERSIDE = 0.54;
const CAP_TOP = 0.86;
/** Parts of the width. */
const NUT = 0.74;
const RIM_RADIUS = 0.055;
const STEM = 0.13;

/** An acorn that stands on the tip of its nut at the origin, its stem upward. */
export const acorn = defineFamily({
  name: 'acorn',
  summary: 'A pointed nut under a wider cap with a short stem.',
  sizes: [
    {
      name: 'high',
      kind: 'length',
      required: true,
      meaning: 'from the tip to the end of the stem',
    },
    {
      name: 'across',
      kind: 'length',
      required: false,
      meaning: `over the cap, ${USUAL_WIDTH} of high without it`,
    },
  ],
  example: { high: 85 },
  path(sizes) {
    const high = sizes.number('high');
    const across = sizes.optional('across') ?? USUAL_WIDTH * high;
    checkRange('across', across, LEAST_WIDTH * high, MOST_WIDTH * high, 'mm for this height');

    const [underside, capTop] = [CAP_UNDERSIDE * high, CAP_TOP * high];
    const nut = (NUT * across) / 2;
    const stem = (STEM * across) / 2;

    // The nut's side leaves the cap straight down, so its centre is level with the cap.
    const nutRadius = (underside ** 2 + nut ** 2) / (2 * nut);
    const nutCentre = point(nut - nutRadius, underside);

    // The rim just reaches half the width; the cap's top is a larger circle that holds it.
    const rim = RIM_RADIUS * across;
    const rimCentre = point(across / 2 - rim, underside + rim);
    const drop = rimCentre.y - capTop;
    const capRadius = (rimCentre.x ** 2 + drop ** 2 - rim ** 2) / (-2 * (drop + rim));
    const capCentre = point(0, capTop - capRadius);
    const reach = capRadius / (capRadius - rim);
    const rimEnd = point(
      capCentre.x + (rimCentre.x - capCentre.x) * reach,
      capCentre.y + (rimCentre.y - capCentre.y) * reach,
    );
    const stemFoot = point(stem, capCentre.y + Math.sqrt(capRadius ** 2 - stem ** 2));

    const right = [
      arcBetween(point(0, 0), point(nut, underside), nutCentre, 'anticlockwise'),
      line(point(nut, underside), point(rimCentre.x, underside)),
      arcBetween(point(rimCentre.x, underside), rimEnd, rimCentre, 'anticlockwise'),
      arcBetween(rimEnd, stemFoot, capCentre, 'anticlockwise'),
      line(stemFoot, point(stem, high)),
    ];
    return [...right, line(point(stem, high), point(-stem, high)), ...mirroredPath(right)];
  },
});
