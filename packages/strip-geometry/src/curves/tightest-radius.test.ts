import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyCurve, pointByDefinition } from '../any-curve.test.support.js';
import { cross, distance, minus, point } from '../point.js';
import {
  cubic,
  ellipticalArc,
  line,
  quadratic,
  reversed,
  tightestRadius,
  totalTurn,
} from '../segment.js';
import { formedRadius } from './formed-radius.js';

describe('closed forms', () => {
  // y = x^2 has the radius 1/2 at its vertex and (1 + 4 x^2)^1.5 / 2 elsewhere (elementary).
  test('a parabola', () => {
    const whole = quadratic(point(-1, 1), point(0, -1), point(1, 1));
    expect(tightestRadius(whole)).toBeCloseTo(0.5, 12);
    const side = quadratic(point(1, 1), point(1.5, 2), point(2, 4));
    expect(tightestRadius(side)).toBeCloseTo(5 ** 1.5 / 2, 10);
  });

  // At the ends of the axes an ellipse has the radii b^2 / a and a^2 / b (elementary).
  test('an ellipse', () => {
    const sizes = { centre: point(5, 5), radiusX: 8, radiusY: 3, rotation: 1 };
    const whole = ellipticalArc({ ...sizes, start: 0.1, sweep: 2 * Math.PI });
    expect(tightestRadius(whole)).toBeCloseTo(9 / 8, 12);
    // Round the flat end of its short axis the ends of the arc are tightest.
    const t = Math.PI / 2 - 0.4;
    const flat = ellipticalArc({ ...sizes, start: t, sweep: 0.8 });
    const radius = ((8 * Math.sin(t)) ** 2 + (3 * Math.cos(t)) ** 2) ** 1.5 / 24;
    expect(tightestRadius(flat)).toBeCloseTo(radius, 10);
    expect(tightestRadius(flat)).toBeLessThan(64 / 3);
  });

  test('a cusp has none, a line has no end of it', () => {
    expect(tightestRadius(line(point(0, 0), point(3, 4)))).toBe(Infinity);
    const straight = cubic(point(0, 0), point(1, 1), point(2, 2), point(3, 3));
    expect(tightestRadius(straight)).toBe(Infinity);
    const cusp = cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1));
    expect(tightestRadius(cusp)).toBeLessThan(1e-6);
    expect(tightestRadius(quadratic(point(0, 0), point(9, 0), point(3, 0)))).toBe(0);
    expect(tightestRadius(cubic(point(0, 0), point(0, 0), point(5, 0), point(9, 3)))).toBe(0);
  });
});

/** Radius of the circle through three points. */
function circleThrough(a: { x: number; y: number }, b: typeof a, c: typeof a): number {
  const area = Math.abs(cross(minus(b, a), minus(c, a)));
  return (distance(a, b) * distance(b, c) * distance(c, a)) / (2 * area);
}

test('no circle through three points close together is tighter, and one is as tight', () => {
  const steps = 2000;
  fc.assert(
    fc.property(anyCurve, (segment) => {
      const radius = tightestRadius(segment);
      fc.pre(radius > 1 && radius < 1000 && Math.abs(totalTurn(segment)) > 0.05);
      const at = (step: number) => pointByDefinition(segment, step / steps);
      const radii = Array.from({ length: steps - 1 }, (_, step) =>
        circleThrough(at(step), at(step + 1), at(step + 2)),
      );
      const least = Math.min(...radii);
      expect(least / radius).toBeGreaterThan(0.999);
      expect(least / radius).toBeLessThan(1.02);
      expect(tightestRadius(reversed(segment)) / radius).toBeCloseTo(1, 8);
    }),
    { numRuns: 300 },
  );
});

describe('the radius that metal is formed to', () => {
  test('is the tightest radius of a curve with handles', () => {
    fc.assert(
      fc.property(anyCurve, (segment) => {
        const tightest = tightestRadius(segment);
        fc.pre(tightest > 0.5 && Number.isFinite(tightest));
        expect(formedRadius(segment, 0, 1).radius / tightest).toBeCloseTo(1, 9);
      }),
    );
  });

  // x = 30 u^2 - 20 u^3 and y = 10 u^3 start as y = 10 (x / 30)^1.5, with the radius 0; the heading
  // is h where tan h = u / (2 - 2 u).
  test('leaves out the point at an end with its handle on it', () => {
    const curve = cubic(point(0, 0), point(0, 0), point(10, 0), point(10, 10));
    expect(tightestRadius(curve)).toBe(0);
    const slope = 2 * Math.tan(Math.PI / 360);
    const u = slope / (1 + slope);
    const [dx, dy, ddx, ddy] = [60 * u - 60 * u * u, 30 * u * u, 60 - 120 * u, 60 * u];
    const expected = Math.hypot(dx, dy) ** 3 / (dx * ddy - dy * ddx);
    const { radius } = formedRadius(curve, 0, 1);
    expect(radius / expected).toBeCloseTo(1, 6);
    expect(formedRadius(reversed(curve), 0, 1).radius / radius).toBeCloseTo(1, 9);
  });

  test('keeps the point of a cusp', () => {
    const cusp = cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1));
    expect(formedRadius(cusp, 0, 1).radius).toBeLessThan(1e-6);
  });
});
