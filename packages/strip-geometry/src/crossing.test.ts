import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { between } from './any-outline.test.support.js';
import { type CarriedSegment, isCarried } from './carrier.js';
import { sharedPoint } from './crossing.js';
import { distance, point, polar } from './point.js';
import { arc, line, radiusOf, reversed } from './segment.js';

const flat = line(point(0, 0), point(10, 0));
/** The upper half of a circle of radius 5 about (5, 0). */
const dome = arc(point(10, 0), point(5, 0), Math.PI);

describe('lines', () => {
  test('that cross', () => {
    expect(sharedPoint(flat, line(point(4, -1), point(4, 3)))).toEqual(point(4, 0));
  });

  test('that touch with an end', () => {
    expect(sharedPoint(flat, line(point(4, 0), point(4, 3)))).toEqual(point(4, 0));
    expect(sharedPoint(flat, line(point(10, 0), point(14, 3)))).toEqual(point(10, 0));
  });

  test('that run over one another', () => {
    expect(sharedPoint(flat, line(point(4, 0), point(14, 0)))).toBeDefined();
    expect(sharedPoint(flat, line(point(14, 0), point(-4, 0)))).toBeDefined();
  });

  test.each([
    ['would cross if longer', line(point(4, 0.1), point(4, 3))],
    ['are parallel', line(point(0, 0.1), point(10, 0.1))],
    ['are in line but apart', line(point(10.1, 0), point(14, 0))],
  ])('that %s', (_, other) => {
    expect(sharedPoint(flat, other)).toBeUndefined();
  });
});

describe('arcs', () => {
  test('crossed by a line', () => {
    const found = sharedPoint(dome, line(point(5, 1), point(5, 9)));
    expect(found?.x).toBeCloseTo(5, 12);
    expect(found?.y).toBeCloseTo(5, 12);
  });

  test('crossed by another arc', () => {
    // Two circles of radius 5, six apart, meet four above and below the middle.
    const other = arc(point(16, 0), point(11, 0), Math.PI);
    const found = sharedPoint(dome, other);
    expect(found?.x).toBeCloseTo(8, 12);
    expect(found?.y).toBeCloseTo(4, 12);
  });

  test.each([
    ['a line inside', line(point(5, 1), point(5, 4.9))],
    ['a line below, through the rest of the circle', line(point(0, -1), point(10, -1))],
    ['an arc about the same centre', arc(point(9, 0), point(5, 0), Math.PI)],
    ['the other half, a little lower', arc(point(0, -0.1), point(5, -0.1), Math.PI)],
  ])('apart from %s', (_, other) => {
    expect(sharedPoint(dome, other)).toBeUndefined();
  });
});

function backwards(segment: CarriedSegment): CarriedSegment {
  const image = reversed(segment);
  if (!isCarried(image)) {
    throw new Error('a line or an arc changed its kind');
  }
  return image;
}

test('the order and the sense of the two do not matter, and the point is on both', () => {
  const coordinate = between(-10, 10);
  const anyPoint = fc.record({ x: coordinate, y: coordinate });
  const anyLine = fc.tuple(anyPoint, anyPoint).map(([from, to]): CarriedSegment => line(from, to));
  const anyArc = fc
    .tuple(anyPoint, between(1, 10), between(-4, 4), between(0.2, 6), fc.boolean())
    .map(([centre, radius, start, sweep, clockwise]): CarriedSegment => {
      return arc(polar(centre, radius, start), centre, clockwise ? -sweep : sweep);
    });
  const anySegment = fc.oneof(anyLine, anyArc);
  let met = 0;
  fc.assert(
    fc.property(anySegment, anySegment, (a, b) => {
      fc.pre([a, b].every(({ from, to }) => distance(from, to) > 0.01));
      const found = sharedPoint(a, b);
      expect(sharedPoint(b, a) === undefined).toBe(found === undefined);
      expect(sharedPoint(backwards(a), backwards(b)) === undefined).toBe(found === undefined);
      if (found !== undefined) {
        met++;
        for (const segment of [a, b]) {
          if (segment.kind === 'arc') {
            expect(distance(found, segment.centre)).toBeCloseTo(radiusOf(segment), 5);
          } else {
            const { from, to } = segment;
            const detour = distance(from, found) + distance(found, to) - distance(from, to);
            expect(detour).toBeLessThan(1e-5);
          }
        }
      }
    }),
    { numRuns: 1000 },
  );
  expect(met).toBeGreaterThan(100);
});
