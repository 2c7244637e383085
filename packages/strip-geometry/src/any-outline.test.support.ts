import fc from 'fast-check';
import { BendError } from './bend-rules/bend-error.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import type { Outline, Point } from './outline.js';
import { acorn } from './outlines/acorn.js';
import { circle } from './outlines/circle.js';
import { crescent } from './outlines/crescent.js';
import { heart } from './outlines/heart.js';
import { polygon } from './outlines/polygon.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { sailboat } from './outlines/sailboat.js';
import { star } from './outlines/star.js';

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

/** Outlines of each family over the whole range of its sizes. */
export const anyOutlineOf: Readonly<Record<string, fc.Arbitrary<Outline>>> = {
  circle: anySize.map((across) => circle.draw({ across })),
  rectangle: anyRectangle,
  'regular polygon': anyRegularPolygon,
  star: anyStar,
  heart: fc.record({ across: anySize, share: part }).map(({ across, share }) => {
    return heart.draw({ across, high: across * within(0.7, 1.6, share) });
  }),
  crescent: fc.record({ across: anySize, share: part }).map(({ across, share }) => {
    return crescent.draw({ across, thick: across * within(0.1, 0.6, share) });
  }),
  acorn: fc.record({ high: anySize, share: part }).map(({ high, share }) => {
    return acorn.draw({ high, across: high * within(0.6, 1, share) });
  }),
  sailboat: fc.record({ across: anySize, share: part }).map(({ across, share }) => {
    return sailboat.draw({ across, high: across * within(0.8, 1.6, share) });
  }),
  polygon: anyPolygon,
};

/** An outline of any family. */
export const anyOutline: fc.Arbitrary<Outline> = fc.oneof(...Object.values(anyOutlineOf));

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
