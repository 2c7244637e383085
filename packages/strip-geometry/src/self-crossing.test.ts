import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyCurve, anyEllipse, anySegment, anySmoothOutline } from './any-curve.test.support.js';
import { anyOutline, between } from './any-outline.test.support.js';
import { sharedPoint } from './crossing.js';
import { overlappingPairs } from './curves/box-tree.js';
import { isSimple } from './is-simple.test.support.js';
import type { Outline, Point, Segment } from './outline.js';
import { circle } from './outlines/circle.js';
import { closedPolygon } from './outlines/closed-polygon.js';
import { distance, point, polar } from './point.js';
import {
  arc,
  cubic,
  ellipticalArc,
  lengthOf,
  line,
  pointAt,
  quadratic,
  turnAtJoint,
} from './segment.js';
import { selfCrossing } from './self-crossing.js';

describe('one segment over itself', () => {
  test('a loop, found where its two branches meet', () => {
    const loop = cubic(point(0, 0), point(30, 20), point(-20, 20), point(10, 0));
    const found = selfCrossing([loop, line(point(10, 0), point(0, 0))]);
    expect(found).toMatchObject({ first: 0, second: 0 });
    // It is symmetric about x = 5.
    expect(found?.at.x).toBeCloseTo(5, 9);
  });

  test.each([
    ['a quadratic', quadratic(point(0, 0), point(9, 9), point(2, 2))],
    ['a cubic', cubic(point(0, 0), point(9, 9), point(-7, -7), point(2, 2))],
  ])('%s that runs back', (_, back) => {
    expect(
      selfCrossing([back, line(point(2, 2), point(0, 3)), line(point(0, 3), point(0, 0))]),
    ).toMatchObject({ first: 0, second: 0 });
  });

  test('a closed drop and a whole ellipse only end where they start', () => {
    expect(selfCrossing([cubic(point(0, 0), point(9, 6), point(-9, 6), point(0, 0))])).toBe(
      undefined,
    );
    expect(selfCrossing(circle.draw({ across: 30 }).segments)).toBe(undefined);
    fc.assert(
      fc.property(anyEllipse, ({ segments }) => {
        expect(selfCrossing(segments)).toBe(undefined);
      }),
    );
  });
});

describe('neighbours', () => {
  test('that cross beyond their joint', () => {
    // A half circle of radius 5, and from its end a line back through it.
    const dome = arc(point(10, 0), point(5, 0), Math.PI);
    const back = line(point(0, 0), point(12, 9));
    const rest = line(point(12, 9), point(10, 0));
    const found = selfCrossing([dome, back, rest]);
    expect(found).toMatchObject({ first: 0, second: 1 });
    expect(found && distance(found.at, point(5, 0))).toBeCloseTo(5, 5);
  });

  test('of two segments, joined at both ends', () => {
    const [a, b] = [point(0, 0), point(10, 0)];
    expect(selfCrossing([arc(b, point(5, 0), Math.PI), line(a, b)])).toBe(undefined);
    expect(selfCrossing([cubic(b, point(10, 8), point(0, -8), a), line(a, b)])).toMatchObject({
      first: 0,
      second: 1,
    });
  });

  test('that only touch smoothly at their joint', () => {
    const [a, b] = [point(0, 0), point(10, 0)];
    const hook = cubic(b, point(20, 0), point(20, 10), point(10, 10));
    expect(selfCrossing([line(a, b), hook, line(point(10, 10), a)])).toBe(undefined);
  });
});

test('finds what chords find, whichever kinds the outline is of', () => {
  // Evenly spread: corners on the axes make sides in line, which chords cannot tell from crossing.
  const coordinate = fc.noBias(fc.integer({ min: -30_000, max: 30_000 })).map((n) => n / 1000);
  const anyCorner = fc.record({ x: coordinate, y: coordinate });
  const anyTangle = fc
    .array(fc.tuple(anyCorner, anyCorner, anyCorner, fc.nat(3)), { minLength: 3, maxLength: 5 })
    .filter((corners) =>
      corners.every(([corner], index) =>
        corners.every(([other], second) => index === second || distance(corner, other) > 1),
      ),
    )
    .map((corners): Segment[] =>
      corners.map(([from, first, second, kind], index) => {
        const to = corners[(index + 1) % corners.length]?.[0] ?? from;
        const near = (p: Point) => point((from.x + to.x + p.x) / 3, (from.y + to.y + p.y) / 3);
        return kind === 0
          ? line(from, to)
          : kind === 1
            ? quadratic(from, near(first), to)
            : cubic(from, near(first), near(second), to);
      }),
    );
  const tally = { crossing: 0, simple: 0 };
  fc.assert(
    fc.property(anyTangle, (segments) => {
      // Chords of sides that leave a joint in one direction cross where the sides do not.
      fc.pre(
        segments.every((segment, index) => isOpen(segment, segments[index + 1] ?? segments[0])),
      );
      const found = selfCrossing(segments);
      // A near miss can look like a crossing to coarse chords, but not to fine ones.
      const outline = { name: 'trial', segments };
      const simple = isSimple(outline) || isSimple(outline, 120);
      if (found === undefined) {
        tally.simple++;
        expect(simple).toBe(true);
      } else {
        tally.crossing++;
        for (const index of [found.first, found.second]) {
          const segment = segments[index];
          expect(segment && distanceTo(segment, found.at)).toBeLessThan(0.1);
        }
      }
    }),
    { numRuns: 500 },
  );
  expect(tally.crossing).toBeGreaterThan(100);
  expect(tally.simple).toBeGreaterThan(100);
});

function isOpen(before: Segment, after: Segment | undefined): boolean {
  return after !== undefined && Math.abs(turnAtJoint(before, after)) < Math.PI - 0.1;
}

/** To the nearest of a thousand places along the segment. */
function distanceTo(segment: Segment, p: Point): number {
  const length = lengthOf(segment);
  const apart = Array.from({ length: 1001 }, (_, step) =>
    distance(pointAt(segment, (length * step) / 1000), p),
  );
  return Math.min(...apart);
}

test('no outline of the families crosses itself, nor does one of smooth curves drawn by chords', () => {
  fc.assert(
    fc.property(fc.oneof(anyOutline, anySmoothOutline), (outline: Outline) => {
      expect(selfCrossing(outline.segments) === undefined).toBe(isSimple(outline));
    }),
  );
});

test('two curves share a point where they are moved to touch, and none where they are moved off', () => {
  fc.assert(
    fc.property(anyCurve, anySegment, between(0.1, 0.9), (a, b, share) => {
      const meet = pointAt(a, share * lengthOf(a));
      const there = pointAt(b, share * lengthOf(b));
      const moved = shifted(b, meet.x - there.x, meet.y - there.y);
      const found = sharedPoint(a, moved);
      expect(found).toBeDefined();
      expect(sharedPoint(moved, a)).toBeDefined();
      expect(sharedPoint(a, shifted(b, 1000, 1000))).toBe(undefined);
    }),
  );
});

function shifted(segment: Segment, x: number, y: number): Segment {
  const by = (p: Point) => point(p.x + x, p.y + y);
  const ends = { from: by(segment.from), to: by(segment.to) };
  switch (segment.kind) {
    case 'line':
      return { ...segment, ...ends };
    case 'arc':
    case 'elliptical arc':
      return { ...segment, ...ends, centre: by(segment.centre) };
    case 'quadratic':
      return { ...segment, ...ends, control: by(segment.control) };
    case 'cubic':
      return {
        ...segment,
        ...ends,
        control1: by(segment.control1),
        control2: by(segment.control2),
      };
  }
}

test('curves that all but touch keep apart, to a thousandth of a millimetre', () => {
  const [start, sweep] = [0.3, 2];
  const outer = ellipticalArc({
    ...{ centre: point(0, 0), radiusX: 20, radiusY: 20, rotation: 0, start, sweep },
  });
  const at = polar(point(0, 0), 19.999, start);
  expect(sharedPoint(outer, arc(at, point(0, 0), sweep))).toBe(undefined);
  const nearer = polar(point(0, 0), 20 - 5e-7, start);
  expect(sharedPoint(outer, arc(nearer, point(0, 0), sweep))).toBeDefined();
});

test('a path of thousands of segments is searched whole', () => {
  const corners = Array.from({ length: 5000 }, (_, index) =>
    polar(point(0, 0), 100 + (index % 2), (index * 2 * Math.PI) / 5000),
  );
  expect(selfCrossing(closedPolygon(corners))).toBe(undefined);
  const crossed = [...corners];
  crossed[4000] = polar(point(0, 0), 250, 1);
  expect(selfCrossing(closedPolygon(crossed))?.second).toBeGreaterThanOrEqual(3999);
});

test('pairs of boxes are those that every pair tried finds', () => {
  const anyBox = fc
    .tuple(between(0, 10), between(0, 10), between(0, 3), between(0, 3))
    .map(([left, bottom, wide, high]) => {
      return { left, bottom, right: left + wide, top: bottom + high };
    });
  fc.assert(
    fc.property(fc.array(anyBox, { maxLength: 30 }), (boxes) => {
      const expected = boxes.flatMap((a, first) =>
        boxes.flatMap((b, second) =>
          first < second &&
          a.left <= b.right &&
          b.left <= a.right &&
          a.bottom <= b.top &&
          b.bottom <= a.top
            ? [`${first} ${second}`]
            : [],
        ),
      );
      const found: string[] = [];
      overlappingPairs(boxes, (first, second) => found.push(`${first} ${second}`));
      expect(found.sort()).toEqual(expected.sort());
    }),
  );
});
