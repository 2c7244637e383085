import { FULL_TURN } from '../angle.js';
import { OutlineError } from '../outline-error.js';
import { point, polar } from '../point.js';
import { closedPolygon } from './closed-polygon.js';
import { type CheckedSizes, defineFamily } from './define-family.js';

/** A regular polygon about the origin, with a side at the bottom. */
export const regularPolygon = defineFamily({
  name: 'regular polygon',
  summary: 'Equal sides and equal angles: a triangle, square, hexagon and so on.',
  sizes: [
    { name: 'sides', kind: 'count', required: true, meaning: 'how many sides, at least 3' },
    { name: 'side', kind: 'length', required: false, meaning: 'the length of one side' },
    {
      name: 'across flats',
      kind: 'length',
      required: false,
      meaning: 'from flat to opposite flat, for an even number of sides',
    },
    {
      name: 'across corners',
      kind: 'length',
      required: false,
      meaning: 'the diameter of the circle through the corners',
    },
  ],
  example: { sides: 6, 'across flats': 75 },
  path(sizes) {
    const sides = sizes.number('sides');
    if (sides < 3) {
      throw new OutlineError('out of range', `"sides" must be at least 3; got ${sides}.`, 'sides');
    }
    const radius = circumradius(sizes, sides);
    const first = -Math.PI / 2 - Math.PI / sides;
    const corners = Array.from({ length: sides }, (_, index) =>
      polar(point(0, 0), radius, first + (index * FULL_TURN) / sides),
    );
    return closedPolygon(corners);
  },
});

function circumradius(sizes: CheckedSizes, sides: number): number {
  const given = ['side', 'across flats', 'across corners'].filter(
    (name) => sizes.optional(name) !== undefined,
  );
  const [name, second] = given;
  if (name === undefined) {
    const message = 'A regular polygon needs one of "side", "across flats" and "across corners".';
    throw new OutlineError('missing size', message, 'side');
  }
  if (second !== undefined) {
    const message =
      'A regular polygon takes only one of "side", "across flats" and "across corners"; ' +
      `got ${given.map((field) => `"${field}"`).join(' and ')}.`;
    throw new OutlineError('contradictory sizes', message, second);
  }
  const size = sizes.number(name);
  const half = Math.PI / sides;
  if (name === 'side') {
    return size / (2 * Math.sin(half));
  }
  if (name === 'across corners') {
    return size / 2;
  }
  if (sides % 2 !== 0) {
    const message =
      `"across flats" needs an even number of sides, since a polygon of ${sides} sides has no ` +
      'two flats opposite each other; give "side" or "across corners".';
    throw new OutlineError('contradictory sizes', message, 'across flats');
  }
  return size / (2 * Math.cos(half));
}
