import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Segment } from './outline.js';
import { distance, point } from './point.js';
import {
  arc,
  cubic,
  ellipticalArc,
  headingAtEnd,
  headingAtStart,
  lengthOf,
  line,
  pointAt,
  quadratic,
} from './segment.js';
import { splitSegment } from './split-segment.js';

const kinds: readonly Segment[] = [
  line(point(1, 2), point(40, -7)),
  arc(point(30, 0), point(0, 0), 2.5),
  arc(point(30, 0), point(5, 0), -2 * Math.PI),
  quadratic(point(0, 0), point(10, 40), point(50, 0)),
  cubic(point(0, 0), point(30, 40), point(60, -40), point(90, 5)),
  ellipticalArc({
    centre: point(3, 4),
    radiusX: 40,
    radiusY: 15,
    rotation: 0.5,
    start: -1,
    sweep: 4,
  }),
];

test('the parts lie on the segment, meet smoothly and add up', () => {
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...kinds), share, share, (segment, at, probe) => {
      const length = lengthOf(segment);
      const [before, after] = splitSegment(segment, at * length);
      expect([before.kind, after.kind]).toEqual([segment.kind, segment.kind]);
      expect([before.from, after.to]).toEqual([segment.from, segment.to]);
      expect(before.to).toEqual(after.from);
      expect(lengthOf(before)).toBeCloseTo(at * length, 6);
      expect(lengthOf(after)).toBeCloseTo((1 - at) * length, 6);
      const [arrives, leaves] = [headingAtEnd(before), headingAtStart(after)];
      expect(distance(arrives, leaves)).toBeLessThan(1e-6);
      const first = pointAt(before, probe * at * length);
      expect(distance(first, pointAt(segment, probe * at * length))).toBeLessThan(1e-6);
      const second = pointAt(after, probe * (1 - at) * length);
      const along = (at + probe * (1 - at)) * length;
      expect(distance(second, pointAt(segment, along))).toBeLessThan(1e-6);
    }),
  );
});
