import fc from 'fast-check';
import { BendError } from './bend-rules/bend-error.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import type { Outline, Point } from './outline.js';
import { acorn } from './outlines/acorn.js';
import { arrow } from './outlines/arrow.js';
import { bell } from './outlines/bell.js';
import { circle } from './outlines/circle.js';
import { crescent } from './outlines/crescent.js';
import { ellipse } from './outlines/ellipse.js';
import type { OutlineFamily } from './outlines/family.js';
import { fish } from './outlines/fish.js';
import { flower } from './outlines/flower.js';
import { gingerbreadFigure } from './outlines/gingerbread-figure.js';
import { heart } from './outlines/heart.js';
import { house } from './outlines/house.js';
import { leaf } from './outlines/leaf.js';
import { letter } from './outlines/letter.js';
import { oval } from './outlines/oval.js';
import { plusSign } from './outlines/plus-sign.js';
import { polygon } from './outlines/polygon.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { sailboat } from './outlines/sailboat.js';
import { star } from './outlines/star.js';
import { teardrop } from './outlines/teardrop.js';
import { tree } from './outlines/tree.js';

/** Any number from `min` to `max`, both included. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true });
}

/** Sizes of cutters that a shop makes, millimetres. */
export const anySize = between(25, 250);

const part = between(0, 1);

/** A number `share` of the way from `least` to `most`. */
function within(least: number, most: number, share: number): number {
  return Math.min(least + share * (most - least), most);
}

const anyStar = fc
  .record({ points: fc.integer({ min: 3, max: 12 }), across: anySize, share: between(0.2, 0.9) })
  .map(({ points, across, share }) =>
    star.draw({ points, across, 'inner ratio': share * Math.cos(Math.PI / points) }),
  );

const anyRectangle = fc
  .record({ long: anySize, flat: between(0.1, 1), rounding: fc.option(between(0.05, 1)) })
  .map(({ long, flat, rounding }) => {
    const wide = long * flat;
    return rectangle.draw(
      rounding === null ? { long, wide } : { long, wide, 'corner radius': (rounding * wide) / 2 },
    );
  });

const anyRegularPolygon = fc
  .record({ sides: fc.integer({ min: 3, max: 24 }), across: anySize })
  .map(({ sides, across }) => regularPolygon.draw({ sides, 'across corners': across }));

/** Corners on a ray each, all round the origin, so that no two sides cross. */
const anyPolygon = fc
  .record({ across: anySize, reaches: fc.array(between(0.4, 1), { minLength: 4, maxLength: 12 }) })
  .map(({ across, reaches }) => {
    const corners = reaches.map((reach, index): Point => {
      const angle = (2 * Math.PI * index) / reaches.length;
      const radius = (reach * across) / 2;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    });
    return polygon.draw({ corners });
  });

const anyTree = fc
  .record({ high: anySize, share: part, tiers: fc.integer({ min: 1, max: 4 }) })
  .map(({ high, share, tiers }) =>
    tree.draw({ high, across: high * within(0.5, 1, share), tiers }),
  );

const anyArrow = fc
  .record({ long: anySize, share: part, shaft: between(0.21, 0.79) })
  .map(({ long, share, shaft }) => {
    const wide = long * within(0.3, 1, share);
    return arrow.draw({ long, wide, shaft: shaft * wide });
  });

const anyFlower = fc
  .record({ across: anySize, petals: fc.integer({ min: 3, max: 16 }) })
  .map(({ across, petals }) => flower.draw({ across, petals }));

const anyLetter = fc
  .record({ high: anySize, name: fc.constantFrom(...'ABCDEFGHIJKLMNOPQRSTUVWXYZ') })
  .map(({ high, name }) => letter.draw({ letter: name, high }));

/** A family of two sizes, the second from `least` to `most` times the first. */
function anyByTwo(
  family: OutlineFamily,
  [first, second]: readonly [string, string],
  [least, most]: readonly [number, number],
): fc.Arbitrary<Outline> {
  return fc
    .record({ size: anySize, share: part })
    .map(({ size, share }) =>
      family.draw({ [first]: size, [second]: size * within(least, most, share) }),
    );
}

/** Outlines of each family over the whole range of its sizes. */
export const anyOutlineOf: Readonly<Record<string, fc.Arbitrary<Outline>>> = {
  circle: anySize.map((across) => circle.draw({ across })),
  ellipse: anyByTwo(ellipse, ['across', 'high'], [0.25, 4]),
  oval: anyByTwo(oval, ['long', 'wide'], [0.1, 0.95]),
  rectangle: anyRectangle,
  'regular polygon': anyRegularPolygon,
  star: anyStar,
  'plus sign': anyByTwo(plusSign, ['across', 'arm'], [0.15, 0.6]),
  arrow: anyArrow,
  heart: anyByTwo(heart, ['across', 'high'], [0.7, 1.6]),
  crescent: anyByTwo(crescent, ['across', 'thick'], [0.1, 0.6]),
  teardrop: anyByTwo(teardrop, ['high', 'across'], [0.5, 0.8]),
  flower: anyFlower,
  leaf: anyByTwo(leaf, ['high', 'across'], [0.4, 0.8]),
  acorn: anyByTwo(acorn, ['high', 'across'], [0.6, 1]),
  tree: anyTree,
  bell: anyByTwo(bell, ['high', 'across'], [0.82, 1.05]),
  fish: anyByTwo(fish, ['long', 'high'], [0.38, 0.62]),
  house: fc.oneof(
    anyByTwo(house, ['across', 'high'], [0.75, 1.3]),
    anyByTwo(house, ['across', 'chimney'], [0.1, 0.2]),
  ),
  sailboat: anyByTwo(sailboat, ['across', 'high'], [0.8, 1.6]),
  'gingerbread figure': anySize.map((high) => gingerbreadFigure.draw({ high })),
  letter: anyLetter,
  polygon: anyPolygon,
};

/** An outline of any family. */
export const anyOutline: fc.Arbitrary<Outline> = fc.oneof(...Object.values(anyOutlineOf));

/** An outline of any family that is drawn in lines and circular arcs alone. */
export const anyOutlineOfArcs: fc.Arbitrary<Outline> = anyOutline.filter(({ segments }) =>
  segments.every(({ kind }) => kind === 'line' || kind === 'arc'),
);

/** Tinplate and the bends that a bench makes in it. */
export const anyNeutralAxis: fc.Arbitrary<BendRule> = fc
  .record({ thickness: between(0.15, 0.4), insideRadius: between(0, 0.5), factor: part })
  .map(neutralAxis);

/** Runs `make`, but skips the trial of a property where the metal cannot follow the outline. */
export function orSkip<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    fc.pre(!(error instanceof BendError && error.code !== 'out of range'));
    throw error;
  }
}
