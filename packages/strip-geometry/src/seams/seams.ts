import { type NamedLength, ofOneLength } from '../named-length.js';
import { buttJoint } from './butt-joint.js';
import { groovedSeam } from './grooved-seam.js';
import { plainLap } from './plain-lap.js';
import type { SeamKind } from './seam.js';
import { tuckedTab } from './tucked-tab.js';

const TAB: NamedLength = { name: 'tab', meaning: 'length of the tab' };
const LAP: NamedLength = { name: 'lap', meaning: 'how far the end lies over the start' };
const WIDTH: NamedLength = { name: 'seam width', meaning: 'width of the finished lock' };

/** Every seam that can be chosen, in the order help texts list them. */
export const seams: readonly SeamKind[] = [
  ofOneLength('tucked tab', 'a tab pinched in the hem of the other end', TAB, 12, tuckedTab),
  ofOneLength('soldered lap', 'one end over the other, lead-free solder', LAP, 6.35, (lap) =>
    plainLap(lap, 'soldered'),
  ),
  ofOneLength('riveted lap', 'one end over the other, riveted along the middle', LAP, 10, (lap) =>
    plainLap(lap, 'riveted'),
  ),
  ofOneLength('grooved seam', 'two hooks locked in each other', WIDTH, 4, groovedSeam),
  {
    name: 'butt joint',
    summary: 'the ends only meet',
    sizes: [],
    example: {},
    make: buttJoint,
  },
];

/** The seam of that name, such as `tucked tab`, or undefined if there is none. */
export function seamNamed(name: string): SeamKind | undefined {
  return seams.find((kind) => kind.name === name);
}
