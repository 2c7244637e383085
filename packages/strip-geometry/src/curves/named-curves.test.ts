import { describe, expect, test } from 'vitest';
import { bounds, perimeter } from '../measure.js';
import { metalNamed } from '../metal/metals.js';
import type { Outline, Point } from '../outline.js';
import { point } from '../point.js';
import { arc, cubic, lengthOf, line, pointAt } from '../segment.js';

/** A closed curve by its chords, `count` of them. */
function chords(at: (angle: number) => Point, count: number): Outline {
  const stations = Array.from({ length: count }, (_, index) => at((2 * Math.PI * index) / count));
  return {
    name: 'chords',
    segments: stations.map((from, index) => line(from, stations[(index + 1) % count] ?? from)),
  };
}

const turned = (r: number, angle: number) => point(r * Math.cos(angle), r * Math.sin(angle));

describe('perimeters of named curves, by their chords', () => {
  // Encyclopedia of Mathematics: a cardioid r = a (1 + cos t) is 8a long.
  // 360 chords of it come to 7.99977154875 a (recomputed).
  test('cardioid', () => {
    const cardioid = (t: number) => turned(1 + Math.cos(t), t);
    expect(perimeter(chords(cardioid, 360))).toBeCloseTo(7.99977154875, 10);
    expect(perimeter(chords(cardioid, 36_000))).toBeCloseTo(8, 7);
  });

  // Astroid 6a, a the outer radius; nephroid 24a, a the rolling radius (from memory).
  test.each<[string, (t: number) => Point, number]>([
    ['astroid', (t) => point(Math.cos(t) ** 3, Math.sin(t) ** 3), 6],
    [
      'nephroid',
      (t) => point(3 * Math.cos(t) - Math.cos(3 * t), 3 * Math.sin(t) - Math.sin(3 * t)),
      24,
    ],
    // A formula table: the deltoid of rolling radius a is 16a long.
    [
      'deltoid',
      (t) => point(2 * Math.cos(t) + Math.cos(2 * t), 2 * Math.sin(t) - Math.sin(2 * t)),
      16,
    ],
    // The usual heart of four cosines; 102.16755161459 by quadrature (recomputed).
    [
      'heart of cosines',
      (t) =>
        point(
          16 * Math.sin(t) ** 3,
          13 * Math.cos(t) - 5 * Math.cos(2 * t) - 2 * Math.cos(3 * t) - Math.cos(4 * t),
        ),
      102.16755161459,
    ],
  ])('%s', (_, at, length) => {
    expect(perimeter(chords(at, 36_000)) / length).toBeCloseTo(1, 7);
  });
});

// M. Mortensen's text on circles by Bezier curves: with handles of 0.5522847498 the four quarters
// stay within 0.027253 % of the radius, all outside it.
test('four cubic curves are a circle within 0.03 percent', () => {
  const handle = 0.5522847498;
  const quarter = cubic(point(1, 0), point(1, handle), point(handle, 1), point(0, 1));
  const radii = Array.from({ length: 2001 }, (_, index) => {
    const { x, y } = pointAt(quarter, (lengthOf(quarter) * index) / 2000);
    return Math.hypot(x, y);
  });
  expect(Math.max(...radii)).toBeCloseTo(1.00027253, 8);
  expect(Math.min(...radii)).toBeCloseTo(1, 8);
  expect(bounds({ name: 'quarter', segments: [quarter] }).right).toBeCloseTo(1, 9);
});

// The same text: the handle 0.551915024494 shares the error out, 0.0196 % to either side, and the
// circle of four such quarters measures 6.28342471962 (recomputed).
test('the handle of the least error', () => {
  const handle = 0.551915024494;
  const quarter = cubic(point(1, 0), point(1, handle), point(handle, 1), point(0, 1));
  const radii = Array.from({ length: 2001 }, (_, index) => {
    const { x, y } = pointAt(quarter, (lengthOf(quarter) * index) / 2000);
    return Math.hypot(x, y);
  });
  expect(Math.max(...radii) - 1).toBeCloseTo(0.000196, 6);
  expect(1 - Math.min(...radii)).toBeCloseTo(0.000196, 6);
  expect(4 * lengthOf(quarter)).toBeCloseTo(6.28342471962, 10);
});

// Elementary: a polygon of n sides in a circle is shorter by 1 - sin(x) / x, x = pi / n; figures
// recomputed.
test.each([
  [12, 0.01138],
  [24, 0.002853],
  [36, 0.001269],
  [72, 0.000317],
  [360, 0.0000127],
])('a polygon of %d sides in a circle is shorter by %d', (sides, short) => {
  const inside = chords((angle) => turned(1, angle), sides);
  const whole = perimeter({
    name: 'circle',
    segments: [arc(point(1, 0), point(0, 0), 2 * Math.PI)],
  });
  const shorter = 1 - perimeter(inside) / whole;
  expect(shorter / short).toBeCloseTo(1, 2);
  const x = Math.PI / sides;
  expect(shorter).toBeCloseTo(1 - Math.sin(x) / x, 12);
});

// Steel 7.85 g/cm3 (from memory); the mechanical design handbook's 40.8 lb a square foot and inch
// of thickness is 7.84.
test('steel weighs what the handbooks say', () => {
  const density = metalNamed('uncoated steel')?.density ?? 0;
  expect(density).toBe(7.85);
  const gramsInPound = 453.59237;
  const cubicCentimetres = 2.54 ** 3 * 144;
  expect((40.8 * gramsInPound) / cubicCentimetres / density).toBeCloseTo(1, 2);
});
