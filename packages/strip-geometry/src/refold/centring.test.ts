import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import type { Point } from '../outline.js';
import { distance, minus } from '../point.js';
import { type Centring, centre, longest } from './centring.js';

const anyPoint = fc.record({ x: between(-50, 50), y: between(-50, 50) });

/** From a place to each of some points; the unknowns are the place. */
function toEach(points: readonly Point[]): Centring<Point> {
  const effect = { x: Float64Array.of(1, 0), y: Float64Array.of(0, 1) };
  return {
    size: 2,
    offsets: (place) => points.map((p) => minus(place, p)),
    effects: () => points.map(() => effect),
    wishes: () => [],
    changed: ({ x, y }, [alongX = 0, alongY = 0], share) => ({
      x: x + share * alongX,
      y: y + share * alongY,
    }),
  };
}

function nearest(points: readonly Point[], start: Point): Point {
  let last = start;
  for (const { state, bound } of centre(toEach(points), start, { least: 0, shrink: 0.5 })) {
    expect(longest(toEach(points).offsets(state))).toBeLessThan(bound);
    last = state;
  }
  return last;
}

// The smallest circle round two points has them at the ends of a diameter; round the corners of a
// triangle without an angle over 90 degrees it passes through all three (Sylvester's problem).
test('the place nearest to the farthest of two points is halfway between them', () => {
  fc.assert(
    fc.property(anyPoint, anyPoint, anyPoint, (a, b, start) => {
      fc.pre(distance(a, b) > 1);
      const found = nearest([a, b], start);
      const radius = distance(a, b) / 2;
      expect(Math.max(distance(found, a), distance(found, b))).toBeLessThan(radius * 1.005);
    }),
  );
});

test('of the corners of a regular triangle, it is the middle', () => {
  const corners = [0, 2, 4].map((third) => ({
    x: 10 * Math.cos((third * Math.PI) / 3),
    y: 10 * Math.sin((third * Math.PI) / 3),
  }));
  const found = nearest(corners, { x: 9, y: -4 });
  for (const corner of corners) {
    expect(distance(found, corner)).toBeLessThan(10.05);
  }
});
