import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyCurve, anySegment, sampled } from '../any-curve.test.support.js';
import { between } from '../any-outline.test.support.js';
import type { Point, Segment } from '../outline.js';
import { distance, point } from '../point.js';
import {
  cubic,
  ellipticalArc,
  headingAt,
  headingAtEnd,
  headingAtStart,
  lengthOf,
  pointAt,
  quadratic,
  reversed,
  tightestRadius,
} from '../segment.js';
import { mirroredPath, moved, scaled, turned } from '../transform.js';
import { parametric } from './parametric-curve.js';

const polyline = (points: readonly Point[]) =>
  points.reduce((sum, p, index) => sum + distance(p, points[index - 1] ?? p), 0);

describe('ellipses', () => {
  const whole = (radiusX: number, radiusY: number) =>
    ellipticalArc({
      ...{ centre: point(7, -3), radiusX, radiusY, rotation: 0.4, start: 1 },
      sweep: 2 * Math.PI,
    });

  /**
   * Perimeter by the arithmetic-geometric mean (Gauss; Abramowitz and Stegun 17.6):
   * 2 pi / M * (a^2 - the sum of 2^(n - 1) c_n^2), with c_0^2 = a^2 - b^2.
   */
  function byMeans(radiusX: number, radiusY: number): number {
    let [a, b] = [Math.max(radiusX, radiusY), Math.min(radiusX, radiusY)];
    let sum = a * a - (a * a - b * b) / 2;
    for (let power = 1; Math.abs(a - b) > 1e-16 * a && power < 1e6; power *= 2) {
      const c = (a - b) / 2;
      [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
      sum -= power * c * c;
    }
    return (2 * Math.PI * sum) / a;
  }

  // Complete elliptic integral 4 a E(e), computed with 30 digits; the first also from memory, as
  // 9.688448220547674.
  test.each([
    [2, 1, 9.688448220547674],
    [5, 3, 25.5269988633981],
    [3, 1, 13.3648932205553],
    [10, 1, 40.639741801009],
  ])('radii %d and %d', (a, b, perimeter) => {
    expect(lengthOf(whole(a, b)) / perimeter).toBeCloseTo(1, 13);
    expect(byMeans(a, b) / perimeter).toBeCloseTo(1, 13);
  });

  test('of any shape agree with the arithmetic-geometric mean', () => {
    fc.assert(
      fc.property(between(0.5, 200), between(0.5, 200), (a, b) => {
        expect(lengthOf(whole(a, b)) / byMeans(a, b)).toBeCloseTo(1, 11);
      }),
    );
  });

  // S. Ramanujan, 1914, Modular equations and approximations to pi: his second formula, which is
  // short by 4.6e-10 of the perimeter for half axes 2 and 1, by 1.2e-5 for 10 and 1 (recomputed).
  test.each([
    [2, 1, 4.6e-10],
    [10, 1, 1.2e-5],
  ])('radii %d and %d, by Ramanujan, are short by %d', (a, b, short) => {
    const h = ((a - b) / (a + b)) ** 2;
    const second = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    const found = 1 - second / lengthOf(whole(a, b));
    // To the last place of the figure.
    expect(Math.abs(found / short - 1)).toBeLessThan(0.05);
  });

  test('a sliver is twice its long axis, there and back', () => {
    expect(lengthOf(whole(1000, 1e-5)) / 4000).toBeCloseTo(1, 9);
  });
});

describe('Bezier curves', () => {
  // sqrt(5) / 2 + asinh(2) / 4: y = x^2 from 0 to 1 (elementary).
  test('a parabola', () => {
    const curve = quadratic(point(0, 0), point(0.5, 0), point(1, 1));
    expect(lengthOf(curve)).toBeCloseTo(1.4789428575446, 12);
    expect(lengthOf(curve)).toBeCloseTo(Math.sqrt(5) / 2 + Math.asinh(2) / 4, 14);
  });

  // M. Mortensen, Mathematics for Computer Graphics Applications, gives the handle
  // 4 (sqrt 2 - 1) / 3; the length of four such quarters, recomputed, is 1.4029e-4 too long.
  test('a quarter of a circle', () => {
    const handle = (4 * (Math.SQRT2 - 1)) / 3;
    expect(handle).toBeCloseTo(0.55228474983079, 13);
    const quarter = cubic(point(1, 0), point(1, handle), point(handle, 1), point(0, 1));
    expect(4 * lengthOf(quarter)).toBeCloseTo(6.2840667923, 10);
    expect((4 * lengthOf(quarter)) / (2 * Math.PI) - 1).toBeCloseTo(1.4029e-4, 8);
  });

  // The semicubical parabola (t^2, t^3), the first curve ever to have its length found (Neile):
  // from -1 to 1, through its cusp, it measures 2 (13 sqrt 13 - 8) / 27.
  const cusp = cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1));
  test('a curve with a cusp', () => {
    expect(lengthOf(cusp)).toBeCloseTo((2 * (13 * Math.sqrt(13) - 8)) / 27, 11);
  });

  test('a curve with all but a cusp', () => {
    for (const offset of [1e-2, 1e-4, 1e-6, 1e-9]) {
      const curve = cubic(point(1, -1), point(-1 / 3, 1 - offset), point(-1 / 3, -1), point(1, 1));
      // The end of a control point moves no point of the curve by more.
      expect(Math.abs(lengthOf(curve) - lengthOf(cusp))).toBeLessThan(4 * offset);
      expect(lengthOf(curve) / polyline(sampled(curve, 200_000))).toBeCloseTo(1, 8);
    }
  });

  test('straight ones are as long as the way along the line', () => {
    const [from, to] = [point(2, 1), point(8, 9)];
    expect(lengthOf(cubic(from, point(5, 5), point(6.5, 7), to))).toBeCloseTo(10, 12);
    expect(lengthOf(cubic(from, from, to, to))).toBeCloseTo(10, 12);
    expect(lengthOf(cubic(from, to, from, to))).toBeCloseTo(10, 12);
    // Out to the middle of the way to the control point, and back.
    expect(lengthOf(quadratic(from, to, from))).toBeCloseTo(10, 12);
  });

  test('a quadratic measures the same written as a cubic', () => {
    fc.assert(
      fc.property(between(-20, 20), between(-20, 20), between(1, 30), (x, y, end) => {
        const [from, control, to] = [point(0, 0), point(x, y), point(end, 3)];
        const raised = cubic(
          from,
          point((2 / 3) * x, (2 / 3) * y),
          point(end + (2 / 3) * (x - end), 3 + (2 / 3) * (y - 3)),
          to,
        );
        expect(lengthOf(raised) / lengthOf(quadratic(from, control, to))).toBeCloseTo(1, 11);
      }),
    );
  });
});

describe('any segment', () => {
  // Chords fall short by a quarter as much each time they are halved, so that what a polyline
  // still lacks is about a third of what the last halving gained, and less than all of it.
  test('is as long as a dense polyline, to the error of that', () => {
    fc.assert(
      fc.property(anyCurve, (segment) => {
        const [rough, fine] = [polyline(sampled(segment, 1000)), polyline(sampled(segment, 2000))];
        const missing = lengthOf(segment) - fine;
        // A hairpin tighter than the chords are long is cut short by up to a chord's bulge.
        const hairpin = tightestRadius(segment) > 0.1 ? 0 : parametric(segment).bulge(0, 1) / 1e6;
        expect(missing).toBeGreaterThan(-1e-11 * fine);
        expect(missing).toBeLessThanOrEqual(fine - rough + hairpin + 1e-10 * fine);
      }),
      { numRuns: 500 },
    );
  });

  const samePath = (segment: Segment) => ({ name: 'path', segments: [segment] });
  const total = ({ segments }: { segments: readonly Segment[] }) =>
    segments.reduce((sum, segment) => sum + lengthOf(segment), 0);

  test('keeps its length when it is reversed, moved, turned or mirrored, and scales with its size', () => {
    fc.assert(
      fc.property(
        anySegment,
        between(-4, 4),
        between(-90, 90),
        between(0.1, 10),
        (segment, angle, by, factor) => {
          const length = lengthOf(segment);
          const path = samePath(segment);
          expect(lengthOf(reversed(segment)) / length).toBeCloseTo(1, 10);
          expect(total(moved(path, point(by, -by))) / length).toBeCloseTo(1, 10);
          expect(total(turned(path, angle)) / length).toBeCloseTo(1, 10);
          expect(total({ segments: mirroredPath([segment]) }) / length).toBeCloseTo(1, 10);
          expect(total(scaled(path, factor)) / length / factor).toBeCloseTo(1, 10);
        },
      ),
    );
  });

  test('is followed point by point, each transform with it', () => {
    fc.assert(
      fc.property(anySegment, between(0, 1), between(-4, 4), (segment, share, angle) => {
        const length = lengthOf(segment);
        const there = pointAt(segment, share * length);
        // Backwards, the same place comes after the rest of the way.
        expect(distance(pointAt(reversed(segment), (1 - share) * length), there)).toBeLessThan(
          1e-8,
        );
        const [image] = mirroredPath([segment]);
        const mirrorImage = point(-there.x, there.y);
        expect(image && distance(pointAt(image, (1 - share) * length), mirrorImage)).toBeLessThan(
          1e-8,
        );
        const [round] = turned(samePath(segment), angle).segments;
        const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
        const turnedImage = point(
          there.x * cosine - there.y * sine,
          there.x * sine + there.y * cosine,
        );
        expect(round && distance(pointAt(round, share * length), turnedImage)).toBeLessThan(1e-8);
      }),
    );
  });

  // The inverse of the length, checked against chords between the places alone.
  test('places equally far along are equally far apart', () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        fc.pre(tightestRadius(segment) > 0.5);
        const length = lengthOf(segment);
        const steps = Math.max(400, Math.ceil(length / 0.05));
        const places = Array.from({ length: steps + 1 }, (_, step) =>
          pointAt(segment, (length * step) / steps),
        );
        const step = length / steps;
        places.slice(1).forEach((place, index) => {
          const chord = distance(place, places[index] ?? place);
          expect(chord).toBeLessThanOrEqual(step * (1 + 1e-9));
          // An arc of radius r is longer than its chord by step^3 / (24 r^2) and a little.
          expect(step - chord).toBeLessThanOrEqual(step ** 3 / (20 * 0.25) + 1e-10);
        });
      }),
      { numRuns: 40 },
    );
  });

  test('the heading is where the path goes', () => {
    fc.assert(
      fc.property(anySegment, between(0.01, 0.99), (segment, share) => {
        const radius = tightestRadius(segment);
        fc.pre(radius > 0.5);
        const length = lengthOf(segment);
        const at = share * length;
        const step = Math.min(1e-3, at / 2, (length - at) / 2);
        const [before, after] = [pointAt(segment, at - step), pointAt(segment, at + step)];
        const heading = headingAt(segment, at);
        const found = point((after.x - before.x) / (2 * step), (after.y - before.y) / (2 * step));
        expect(distance(heading, found)).toBeLessThan(1e-5);
      }),
      { numRuns: 500 },
    );
  });

  test('its headings at the ends are those of the places next to them', () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        const length = lengthOf(segment);
        const tiny = length * 1e-9;
        expect(distance(headingAtStart(segment), headingAt(segment, tiny))).toBeLessThan(1e-2);
        expect(distance(headingAtEnd(segment), headingAt(segment, length - tiny))).toBeLessThan(
          1e-2,
        );
        const back = headingAtStart(reversed(segment));
        const end = headingAtEnd(segment);
        expect(distance(back, point(-end.x, -end.y))).toBeLessThan(1e-9);
      }),
    );
  });

  test('places before the start and past the end are the ends', () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        expect(pointAt(segment, -1)).toBe(segment.from);
        expect(pointAt(segment, lengthOf(segment) + 1)).toBe(segment.to);
      }),
    );
  });
});

test('a handle on the end leaves the heading to the next point', () => {
  const [a, b, c] = [point(0, 0), point(3, 4), point(9, 1)];
  expect(headingAtStart(cubic(a, a, b, c))).toEqual(point(0.6, 0.8));
  expect(headingAtEnd(cubic(c, b, a, a))).toEqual(point(-0.6, -0.8));
  expect(headingAtStart(cubic(a, a, a, b))).toEqual(point(0.6, 0.8));
  expect(headingAtStart(quadratic(a, a, b))).toEqual(point(0.6, 0.8));
  // Noise in a drawing is no handle.
  const noise = point(-1e-8, 2e-8);
  expect(distance(headingAtStart(cubic(a, noise, b, c)), point(0.6, 0.8))).toBeLessThan(1e-6);
});
