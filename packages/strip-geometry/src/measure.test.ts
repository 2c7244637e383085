import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutline, between } from './any-outline.test.support.js';
import { parametric } from './curves/parametric-curve.js';
import { bounds, perimeter, signedArea } from './measure.js';
import type { Outline } from './outline.js';
import { circle } from './outlines/circle.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { star } from './outlines/star.js';
import { point } from './point.js';
import { arc, line, reversedPath } from './segment.js';
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
