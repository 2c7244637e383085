import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyEllipse, anySegment, anySmoothOutline, sampled } from './any-curve.test.support.js';
import { anyOutline, between } from './any-outline.test.support.js';
import { parametric } from './curves/parametric-curve.js';
import { bounds, perimeter, signedArea } from './measure.js';
import type { Outline, Segment } from './outline.js';
import { circle } from './outlines/circle.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { star } from './outlines/star.js';
import { point } from './point.js';
import { arc, cubic, ellipticalArc, line, quadratic, reversedPath } from './segment.js';
import { mirrored, moved, scaled, turned } from './transform.js';

describe('perimeter', () => {
  // Elementary geometry: a regular polygon in a circle of radius 1 measures 2 n sin(pi / n).
  test.each([
    [3, 5.19615242271],
    [4, 5.65685424949],
    [5, 5.87785252292],
    [6, 6],
    [8, 6.12293491784],
    [12, 6.21165708246],
  ])('regular polygon of %i sides', (sides, expected) => {
    const outline = regularPolygon.draw({ sides, 'across corners': 2 });
    expect(perimeter(outline)).toBeCloseTo(expected, 10);
  });

  // From the golden ratio phi: ten edges, the pentagon's side 1.17557050458 / phi each two
  // (planetmath.org/pentagram). The five full chords would be 9.5106, which no cutter follows.
  test('pentagram outline', () => {
    expect(perimeter(star.draw({ points: 5, across: 2 }))).toBeCloseTo(7.26542528005, 10);
  });

  // Elementary geometry: P = 2 n sqrt(R2 + r2 - 2 R r cos(pi / n)).
  test('five-pointed star with inner corners half way out', () => {
    const outline = star.draw({ points: 5, across: 2, 'inner ratio': 0.5 });
    expect(perimeter(outline)).toBeCloseTo(6.64065513052, 10);
  });

  // Elementary geometry: 12 edges of 1 / sqrt 3.
  test('hexagram', () => {
    expect(perimeter(star.draw({ points: 6, across: 2 }))).toBeCloseTo(6.92820323028, 10);
  });

  // Elementary geometry: 2 (100 + 60) - 8 * 10 + 2 pi 10; 2 * 60 + 40 pi; and so on.
  test.each([
    [{ long: 100, wide: 60 }, 320],
    [{ long: 100, wide: 60, 'corner radius': 10 }, 302.831853071796],
    [{ long: 100, wide: 40, 'corner radius': 20 }, 245.663706143592],
  ])('rectangle %o', (sizes, expected) => {
    expect(perimeter(rectangle.draw(sizes))).toBeCloseTo(expected, 10);
  });

  test('circle: pi times the diameter', () => {
    expect(perimeter(circle.draw({ across: 100 }))).toBeCloseTo(314.159265358979, 10);
  });
});

describe('signedArea', () => {
  test('closed forms', () => {
    expect(signedArea(circle.draw({ across: 2 }))).toBeCloseTo(Math.PI, 12);
    expect(signedArea(rectangle.draw({ long: 7, wide: 3 }))).toBeCloseTo(21, 12);
    const rounded = rectangle.draw({ long: 7, wide: 3, 'corner radius': 1 });
    expect(signedArea(rounded)).toBeCloseTo(21 - 4 + Math.PI, 12);
  });

  test('changes sign when an outline is run backwards', () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const backwards = { ...outline, segments: reversedPath(outline.segments) };
        const area = signedArea(outline);
        expect(area).toBeGreaterThan(0);
        expect(signedArea(backwards) / area).toBeCloseTo(-1, 9);
      }),
    );
  });
});

describe('bounds', () => {
  test('holds every point of the outline and touches one on each side', () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const { left, right, bottom, top } = bounds(outline);
        const sampled = outline.segments.flatMap((segment) => {
          const { at } = parametric(segment);
          return Array.from({ length: 1001 }, (_, step) => at(step / 1000));
        });
        // A thousandth of a full turn leaves a sagitta of 5e-6 of the radius.
        const slack = 1e-5 * (right - left + top - bottom);
        const beyond = (found: number, limit: number) => {
          expect(found).toBeLessThanOrEqual(limit + 1e-9);
          expect(found).toBeGreaterThanOrEqual(limit - slack);
        };
        beyond(Math.max(...sampled.map(({ x }) => x)), right);
        beyond(-Math.min(...sampled.map(({ x }) => x)), -left);
        beyond(Math.max(...sampled.map(({ y }) => y)), top);
        beyond(-Math.min(...sampled.map(({ y }) => y)), -bottom);
      }),
    );
  });

  test('a clockwise arc bulges as far as the same arc anticlockwise', () => {
    const half = arc(point(0, 0), point(5, 0), -Math.PI);
    const outline: Outline = { name: 'half round', segments: [half, line(half.to, half.from)] };
    expect(bounds(outline).top).toBeCloseTo(5, 12);
    expect(bounds(outline).bottom).toBeCloseTo(0, 12);
  });
});

test('moving, turning and mirroring keep length and area; scaling scales them', () => {
  fc.assert(
    fc.property(
      anyOutline,
      between(-7, 7),
      between(-300, 300),
      between(0.1, 10),
      (outline, angle, by, factor) => {
        const [length, area] = [perimeter(outline), signedArea(outline)];
        for (const same of [
          moved(outline, point(by, 2 * by)),
          turned(outline, angle),
          mirrored(outline),
        ]) {
          expect(perimeter(same) / length).toBeCloseTo(1, 9);
          expect(signedArea(same) / area).toBeCloseTo(1, 9);
        }
        const larger = scaled(outline, factor);
        expect(perimeter(larger) / length).toBeCloseTo(factor, 9);
        expect(signedArea(larger) / area / factor ** 2).toBeCloseTo(1, 9);
      },
    ),
  );
});

describe('curves of every kind', () => {
  const path = (...segments: Segment[]) => ({ name: 'trial', segments });

  test('area of an ellipse: pi a b', () => {
    fc.assert(
      fc.property(anyEllipse, (outline) => {
        const [first] = outline.segments;
        if (first?.kind !== 'elliptical arc') {
          throw new Error('an ellipse was drawn as something else');
        }
        const area = Math.PI * first.radiusX * first.radiusY;
        expect(signedArea(outline) / area).toBeCloseTo(1, 12);
      }),
    );
  });

  // Archimedes, Quadrature of the Parabola: two thirds of the upright rectangle about it.
  test('area of a parabola over its chord', () => {
    const arch = quadratic(point(6, 0), point(3, 8), point(0, 0));
    expect(signedArea(path(line(point(0, 0), point(6, 0)), arch))).toBeCloseTo((2 / 3) * 24, 12);
  });

  test('area is that of a dense polygon, to the error of that', () => {
    fc.assert(
      fc.property(fc.oneof(anySmoothOutline, anyEllipse), (outline) => {
        const steps = 500;
        const corners = outline.segments.flatMap((segment) => sampled(segment, steps).slice(1));
        const polygonArea = corners.reduce((sum, { x, y }, index) => {
          const next = corners[(index + 1) % corners.length] ?? { x, y };
          return sum + (x * next.y - y * next.x) / 2;
        }, 0);
        expect(signedArea(outline) / polygonArea).toBeCloseTo(1, 4);
        const backwards = { ...outline, segments: reversedPath(outline.segments) };
        expect(signedArea(backwards) / signedArea(outline)).toBeCloseTo(-1, 10);
      }),
    );
  });

  test('a quadratic covers the same area and bounds written as a cubic', () => {
    const [from, control, to] = [point(1, 2), point(9, 14), point(12, -4)];
    const third = (a: number, b: number) => a + (2 / 3) * (b - a);
    const raised = cubic(
      from,
      point(third(from.x, control.x), third(from.y, control.y)),
      point(third(to.x, control.x), third(to.y, control.y)),
      to,
    );
    const drawn = path(quadratic(from, control, to), line(to, from));
    const written = path(raised, line(to, from));
    expect(signedArea(written)).toBeCloseTo(signedArea(drawn), 10);
    expect(bounds(written).top).toBeCloseTo(bounds(drawn).top, 12);
  });

  test('bounds of a turned ellipse: sqrt(a^2 cos^2 + b^2 sin^2) either way', () => {
    const [a, b, rotation] = [9, 4, 0.6];
    const whole = ellipticalArc({
      ...{ centre: point(2, 3), radiusX: a, radiusY: b, rotation },
      ...{ start: 2, sweep: -2 * Math.PI },
    });
    const { left, right, across, high } = bounds(path(whole));
    expect(across / 2).toBeCloseTo(Math.hypot(a * Math.cos(rotation), b * Math.sin(rotation)), 12);
    expect(high / 2).toBeCloseTo(Math.hypot(a * Math.sin(rotation), b * Math.cos(rotation)), 12);
    expect((left + right) / 2).toBeCloseTo(2, 12);
  });

  test('bounds hold every point of a segment and touch one on each side', () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        const { left, right, bottom, top } = bounds(path(segment));
        const points = sampled(segment, 2000);
        const size = right - left + top - bottom;
        // No velocity is greater than some hundred millimetres for each whole of the parameter,
        // and at an extreme the way left is quadratic in the step.
        const slack = 1e-4 * Math.max(size, 1);
        for (const [limit, reached] of [
          [right, Math.max(...points.map(({ x }) => x))],
          [-left, Math.max(...points.map(({ x }) => -x))],
          [top, Math.max(...points.map(({ y }) => y))],
          [-bottom, Math.max(...points.map(({ y }) => -y))],
        ] as const) {
          expect(reached).toBeLessThanOrEqual(limit + 1e-9);
          expect(reached).toBeGreaterThanOrEqual(limit - slack);
        }
      }),
    );
  });
});
