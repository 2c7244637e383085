import type { Point, Segment } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { point } from '../point.js';
import { arcBetween, lengthOf, line } from '../segment.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { closedPolygon } from './closed-polygon.js';
import { defineFamily } from './define-family.js';

/** A rectangle with its lower left corner at the origin; its long side lies flat. */
export const rectangle = defineFamily({
  name: 'rectangle',
  summary: 'A rectangle or square, with sharp or rounded corners.',
  sizes: [
    { name: 'long', kind: 'length', required: true, meaning: 'the longer side' },
    { name: 'wide', kind: 'length', required: true, meaning: 'the shorter side' },
    {
      name: 'corner radius',
      kind: 'length',
      required: false,
      meaning: 'the radius of rounded corners; sharp without it',
    },
  ],
  example: { long: 90, wide: 32 },
  path(sizes) {
    const long = sizes.number('long');
    const wide = sizes.number('wide');
    const radius = sizes.optional('corner radius');
    if (wide > long) {
      const message =
        `"wide" must be at most "long", ${printLength(long)}; got ${printLength(wide)}. ` +
        'Exchange the two.';
      throw new OutlineError('contradictory sizes', message, 'wide');
    }
    if (radius === undefined) {
      return closedPolygon([point(0, 0), point(long, 0), point(long, wide), point(0, wide)]);
    }
    if (radius > wide / 2) {
      const message =
        `"corner radius" must be at most half of "wide", ${printLength(wide / 2)}; ` +
        `got ${printLength(radius)}.`;
      throw new OutlineError('out of range', message, 'corner radius');
    }
    return rounded(long, wide, radius);
  },
});

function rounded(long: number, wide: number, radius: number): Segment[] {
  const [near, far, low, high] = [radius, long - radius, radius, wide - radius];
  const quarter = (from: Point, to: Point, centre: Point) =>
    arcBetween(from, to, centre, 'anticlockwise');
  const segments = [
    line(point(near, 0), point(far, 0)),
    quarter(point(far, 0), point(long, low), point(far, low)),
    line(point(long, low), point(long, high)),
    quarter(point(long, high), point(far, wide), point(far, high)),
    line(point(far, wide), point(near, wide)),
    quarter(point(near, wide), point(0, high), point(near, high)),
    line(point(0, high), point(0, low)),
    quarter(point(0, low), point(near, 0), point(near, low)),
  ];
  // A radius of half the width leaves no straight end.
  return segments.filter((segment) => lengthOf(segment) > LENGTH_TOLERANCE);
}
