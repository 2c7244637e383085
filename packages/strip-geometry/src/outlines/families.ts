import { acorn } from './acorn.js';
import { circle } from './circle.js';
import { crescent } from './crescent.js';
import type { OutlineFamily } from './family.js';
import { heart } from './heart.js';
import { polygon } from './polygon.js';
import { rectangle } from './rectangle.js';
import { regularPolygon } from './regular-polygon.js';
import { sailboat } from './sailboat.js';
import { star } from './star.js';

/** Every kind of outline that can be ordered, in the order help texts list them. */
export const families: readonly OutlineFamily[] = [
  circle,
  rectangle,
  regularPolygon,
  star,
  heart,
  crescent,
  acorn,
  sailboat,
  polygon,
];

/** The family of that name, such as `heart`, or undefined if there is none. */
export function familyNamed(name: string): OutlineFamily | undefined {
  return families.find((family) => family.name === name);
}
