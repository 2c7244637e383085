import fc from 'fast-check';
import { anyOutlineOf, between } from '../any-outline.test.support.js';
import type { Outline } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import type { OutlineFamily, OutlineSizes } from '../outlines/family.js';
import { flower } from '../outlines/flower.js';
import { house } from '../outlines/house.js';
import { rectangle } from '../outlines/rectangle.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { star } from '../outlines/star.js';

/** Draws, or skips the trial where the family refuses a size as out of its range. */
function drawn(family: OutlineFamily, sizes: OutlineSizes): Outline {
  try {
    return family.draw(sizes);
  } catch (error) {
    fc.pre(!(error instanceof OutlineError && error.code === 'out of range'));
    throw error;
  }
}

const part = between(0, 1);

/** A family with sizes by three parts from 0 to 1. */
function byParts(
  family: OutlineFamily,
  sizes: (a: number, b: number, c: number) => OutlineSizes,
): fc.Arbitrary<() => Outline> {
  return fc.tuple(part, part, part).map(
    ([a, b, c]) =>
      () =>
        drawn(family, sizes(a, b, c)),
  );
}

/** Families with more to choose from than `anyOutlineOf` does. */
const wider: Readonly<Record<string, fc.Arbitrary<() => Outline>>> = {
  rectangle: byParts(rectangle, (flat, rounding, square) => {
    const wide = 100 * (0.02 + 0.98 * flat);
    const sharp = square < 0.3;
    return { long: 100, wide, ...(sharp ? {} : { 'corner radius': (rounding * wide) / 2 }) };
  }),
  'regular polygon': byParts(regularPolygon, (sides) => ({
    sides: 3 + Math.round(37 * sides),
    side: 10,
  })),
  /** Up to 16 points with tips of 22 degrees or more, and up to 8 with tips of 10 or more. */
  star: byParts(star, (count, share) => {
    const points = 3 + Math.round(13 * count);
    const [least, most] = [points > 8 ? 22 : 10, 180 - 360 / points - 1];
    return { points, across: 100, 'tip angle': least + share * (most - least) };
  }),
  flower: byParts(flower, (count, depth) => ({
    petals: 3 + Math.round(13 * count),
    across: 100,
    'petal depth': 1 + 20 * depth,
  })),
  house: byParts(house, (high, chimney) => ({
    across: 100,
    high: 75 + 55 * high,
    chimney: 10 + 10 * chimney,
  })),
};

/** Outlines of a family over the proportions it accepts, in any size; very sharp stars left out. */
export function anyProportionsOf(family: OutlineFamily): fc.Arbitrary<() => Outline> {
  const usual = anyOutlineOf[family.name] ?? fc.constant(family.draw(family.example));
  const more = wider[family.name];
  return more ?? usual.map((outline) => () => outline);
}
