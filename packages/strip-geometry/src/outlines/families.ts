import { acorn } from './acorn.js';
import { arrow } from './arrow.js';
import { bell } from './bell.js';
import { circle } from './circle.js';
import { crescent } from './crescent.js';
import { ellipse } from './ellipse.js';
import type { OutlineFamily } from './family.js';
import { fish } from './fish.js';
import { flower } from './flower.js';
import { gingerbreadFigure } from './gingerbread-figure.js';
import { heart } from './heart.js';
import { house } from './house.js';
import { leaf } from './leaf.js';
import { letter } from './letter.js';
import { oval } from './oval.js';
import { plusSign } from './plus-sign.js';
import { polygon } from './polygon.js';
import { rectangle } from './rectangle.js';
import { regularPolygon } from './regular-polygon.js';
import { sailboat } from './sailboat.js';
import { star } from './star.js';
import { teardrop } from './teardrop.js';
import { tree } from './tree.js';

/** Every kind of outline that can be ordered, in the order help texts list them. */
export const families: readonly OutlineFamily[] = [
  circle,
  ellipse,
  oval,
  rectangle,
  regularPolygon,
  star,
  plusSign,
  arrow,
  heart,
  crescent,
  teardrop,
  flower,
  leaf,
  acorn,
  tree,
  bell,
  fish,
  house,
  sailboat,
  gingerbreadFigure,
  letter,
  polygon,
];

/** The family of that name, such as `heart`, or undefined if there is none. */
export function familyNamed(name: string): OutlineFamily | undefined {
  return families.find((family) => family.name === name);
}
