import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toDegrees } from './angle.js';
import { between } from './any-outline.test.support.js';
import { setback } from './bend-rules/setback.js';
import type { Segment } from './outline.js';
import { along, distance, leftOf, point, polar, turnedAbout } from './point.js';
import { roundCorner } from './rounded-corner.js';
import {
  arc,
  cubic,
  ellipticalArc,
  headingAt,
  lengthOf,
  line,
  pointAt,
  quadratic,
  reversed,
  turnAtJoint,
} from './segment.js';
import { turned } from './transform.js';

const corner = point(0, 0);

/** A straight or round side that ends at the corner, arriving in the direction `heading`. */
function arriving(heading: number, curvature: number): Segment {
  return reversed(leaving(heading + Math.PI, -curvature));
}

/** A side that leaves the corner in the direction `heading`; a curvature above 0 bends left. */
function leaving(heading: number, curvature: number): Segment {
  if (curvature === 0) {
    return line(corner, polar(corner, 50, heading));
  }
  const centre = polar(corner, 1 / curvature, heading + Math.PI / 2);
  return arc(corner, centre, Math.sign(curvature) * 1.5);
}

test('between straight lines it is the setback of the handbook formula', () => {
  fc.assert(
    fc.property(between(-170, 170), between(0.01, 3), (degrees, radius) => {
      fc.pre(Math.abs(degrees) > 0.001);
      const rounded = roundCorner(arriving(0, 0), leaving((degrees * Math.PI) / 180, 0), radius);
      const expected = setback(Math.abs(degrees), radius, 0);
      expect(rounded?.before).toBeCloseTo(expected, 9);
      expect(rounded?.after).toBeCloseTo(expected, 9);
      expect(rounded && toDegrees(rounded.turn)).toBeCloseTo(degrees, 9);
    }),
  );
});

describe('beside curves', () => {
  const anyCurvature = fc.oneof(
    fc.constant(0),
    between(1 / 200, 1 / 8),
    between(1 / 200, 1 / 8).map((curvature) => -curvature),
  );

  // Corners and radii are such that the bend fits even between two curves of radius 8 that
  // close in on each other: 8 (1 - cos 20 degrees) is 0.48.
  // Checked by walking: along the side before, round the bend's arc, and on to the side after.
  test('the arc leaves one side and reaches the other in their own directions', () => {
    fc.assert(
      fc.property(
        anyCurvature,
        anyCurvature,
        between(-140, 140),
        between(0.01, 0.4),
        (first, second, degrees, radius) => {
          fc.pre(Math.abs(degrees) > 1);
          const [before, after] = [arriving(0, first), leaving((degrees * Math.PI) / 180, second)];
          const rounded = roundCorner(before, after, radius);
          if (rounded === undefined) {
            throw new Error('a sharp corner was taken for smooth');
          }
          const start = walk(reversed(before), rounded.before);
          const end = walk(after, rounded.after);
          const startHeading = start.heading + Math.PI;
          const side = Math.sign(rounded.turn) * (Math.PI / 2);
          const centre = polar(start.at, radius, startHeading + side);
          const reached = polar(centre, radius, startHeading - side + rounded.turn);
          expect(distance(reached, end.at)).toBeLessThan(1e-8);
          expect(Math.cos(startHeading + rounded.turn - end.heading)).toBeCloseTo(1, 12);
          expect(Math.sign(rounded.turn)).toBe(Math.sign(degrees));
        },
      ),
      { numRuns: 1000 },
    );
  });

  /** Where one is after some length of a side, and which way one faces, in radians. */
  function walk(segment: Segment, length: number) {
    const { from } = segment;
    if (segment.kind === 'line') {
      const heading = Math.atan2(segment.to.y - from.y, segment.to.x - from.x);
      return { at: polar(from, length, heading), heading };
    }
    if (segment.kind !== 'arc') {
      throw new Error(`no way to walk a ${segment.kind}`);
    }
    const { centre } = segment;
    const radius = distance(from, centre);
    const sense = Math.sign(segment.sweep);
    const angle = Math.atan2(from.y - centre.y, from.x - centre.x) + (sense * length) / radius;
    return { at: polar(centre, radius, angle), heading: angle + (sense * Math.PI) / 2 };
  }
});

describe('beside Bezier curves and elliptical arcs', () => {
  /** A curve of about 30 mm that leaves the corner along the x axis, before it is turned. */
  const anyCurve = fc.oneof(
    fc
      .tuple(between(10, 20), between(15, 30), between(-10, 10))
      .map(([reach, x, y]): Segment => quadratic(corner, point(reach, 0), point(x + reach, y))),
    fc
      .tuple(between(8, 20), between(15, 30), between(-8, 8), between(-10, 10))
      .map(
        ([reach, x, y, end]): Segment =>
          cubic(corner, point(reach, 0), point(x, y), point(x + 10, end)),
      ),
    // A handle drawn in, which is common in drawings, leaves toward the second control point.
    between(15, 30).map((x): Segment => cubic(corner, corner, point(x, 0), point(x + 10, x / 2))),
    fc
      .tuple(between(10, 40), between(10, 40), between(0.5, 1.5), fc.boolean())
      .map(([radiusX, radiusY, sweep, left]): Segment => {
        const centre = point(0, left ? radiusY : -radiusY);
        const start = left ? -Math.PI / 2 : Math.PI / 2;
        return {
          ...ellipticalArc({
            ...{ centre, radiusX, radiusY, rotation: 0, start },
            sweep: left ? sweep : -sweep,
          }),
          from: corner,
        };
      }),
    between(10, 40).map((length): Segment => line(corner, point(length, 0))),
    between(-1 / 10, 1 / 10)
      .filter((curvature) => Math.abs(curvature) > 1e-3)
      .map((curvature) => leaving(0, curvature)),
  );

  function facing(segment: Segment, angle: number): Segment {
    const [image] = turned({ name: 'side', segments: [segment] }, angle).segments;
    return image ?? segment;
  }

  // Checked as above, by walking over the arc; positions and headings come from lengths along
  // the curves alone.
  test('the arc leaves one side and reaches the other in their own directions', () => {
    fc.assert(
      fc.property(
        anyCurve,
        anyCurve,
        between(-140, 140),
        between(0.01, 0.4),
        (first, second, degrees, radius) => {
          fc.pre(Math.abs(degrees) > 1);
          const before = reversed(facing(first, Math.PI));
          const after = facing(second, (degrees * Math.PI) / 180);
          const rounded = roundCorner(before, after, radius);
          if (rounded === undefined) {
            throw new Error('a sharp corner was taken for smooth');
          }
          const length = lengthOf(before) - rounded.before;
          const leave = headingAt(before, length);
          const side = Math.sign(rounded.turn) * radius;
          const start = pointAt(before, length);
          const centre = along(start, leftOf(leave), side);
          const reached = turnedAbout(start, centre, rounded.turn);
          expect(distance(reached, pointAt(after, rounded.after))).toBeLessThan(1e-7);
          const arrive = turnedAbout(leave, corner, rounded.turn);
          expect(distance(arrive, headingAt(after, rounded.after))).toBeLessThan(1e-7);
          expect(Math.sign(rounded.turn)).toBe(Math.sign(degrees));
        },
      ),
      { numRuns: 1000 },
    );
  });

  // The same circle, written as an arc and as an ellipse of equal radii.
  test('agrees with the exact answer for circular arcs', () => {
    fc.assert(
      fc.property(between(5, 40), between(20, 150), between(0.05, 0.4), (size, degrees, radius) => {
        const round = leaving((degrees * Math.PI) / 180, 1 / size);
        if (round.kind !== 'arc') {
          throw new Error('a circle was drawn as something else');
        }
        const { centre, sweep } = round;
        const start = (degrees * Math.PI) / 180 - Math.PI / 2;
        const sizes = { centre, radiusX: size, radiusY: size, rotation: 0, start, sweep };
        const exact = roundCorner(arriving(0, 0), round, radius);
        const found = roundCorner(arriving(0, 0), ellipticalArc(sizes), radius);
        expect(found?.before).toBeCloseTo(exact?.before ?? Number.NaN, 8);
        expect(found?.after).toBeCloseTo(exact?.after ?? Number.NaN, 8);
        expect(found?.turn).toBeCloseTo(exact?.turn ?? Number.NaN, 8);
      }),
    );
  });

  test('refuses a bend wider than the curves beside it', () => {
    const circle = { radiusX: 2, radiusY: 2, rotation: 0 };
    // The two circles of the test below, which leave 2 (1 - cos 32.7 degrees), 0.317.
    const [before, after] = [arriving(0, 0.5), leaving(2, 0.5)].map((side) => {
      if (side.kind !== 'arc') {
        throw new Error('a circle was drawn as something else');
      }
      const { from, centre, sweep } = side;
      const start = Math.atan2(from.y - centre.y, from.x - centre.x);
      return ellipticalArc({ ...circle, centre, start, sweep });
    });
    if (before === undefined || after === undefined) {
      throw new Error('two sides make a corner');
    }
    for (const radius of [0.32, 1, 3]) {
      expect(() => roundCorner(before, after, radius)).toThrow(
        expect.objectContaining({ name: 'BendError', code: 'too sharp' }),
      );
    }
    expect(roundCorner(before, after, 0.316)).toBeDefined();
  });
});

test('a smooth joint is left alone', () => {
  expect(roundCorner(arriving(0, 0), leaving(0, 0), 1)).toBeUndefined();
  expect(roundCorner(arriving(0, 0.1), leaving(1e-9, -0.1), 1)).toBeUndefined();
});

test('without a radius a corner takes nothing from its sides', () => {
  const [before, after] = [arriving(0, 0.02), leaving(2, 0.01)];
  const turn = turnAtJoint(before, after);
  expect(roundCorner(before, after, 0)).toEqual({ turn, before: 0, after: 0 });
});

test('refuses a corner that folds straight back', () => {
  for (const radius of [0, 1]) {
    expect(() => roundCorner(arriving(0, 0), leaving(Math.PI, 0), radius)).toThrow(
      expect.objectContaining({ name: 'BendError', code: 'folded flat' }),
    );
  }
});

test('refuses a bend wider than the curves beside it', () => {
  const [before, after] = [arriving(0, 0.5), leaving(2, 0.5)];
  // Two circles of radius 2 that close in on each other leave 2 (1 - cos 32.7 degrees), 0.317.
  for (const radius of [0.32, 1, 3]) {
    expect(() => roundCorner(before, after, radius)).toThrow(
      expect.objectContaining({ name: 'BendError', code: 'too sharp' }),
    );
  }
  expect(roundCorner(before, after, 0.316)).toBeDefined();
});
