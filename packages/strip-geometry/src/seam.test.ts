import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyOutline } from './any-outline.test.support.js';
import { perimeter } from './measure.js';
import type { Outline } from './outline.js';
import { acorn } from './outlines/acorn.js';
import { circle } from './outlines/circle.js';
import { closedPolygon } from './outlines/closed-polygon.js';
import { crescent } from './outlines/crescent.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { point } from './point.js';
import { startAtSeam } from './seam.js';
import { lengthOf, radiusOf } from './segment.js';
import { StripError } from './strip-error.js';

const first = (outline: Outline) => outline.segments[0] ?? expect.fail('no segments');

test('starts at the longest straight side', () => {
  const triangle = { name: 't', segments: closedPolygon([point(0, 0), point(3, 0), point(0, 4)]) };
  const start = first(startAtSeam(triangle, 1));
  expect(start.from).toEqual(point(3, 0));
  expect(lengthOf(start)).toBe(5);
});

test('of equal sides takes the first, even if a later one is longer by a rounding error', () => {
  const hexagon = regularPolygon.draw({ sides: 6, side: 30 });
  expect(startAtSeam(hexagon, 12)).toEqual(hexagon);
  const finger = rectangle.draw({ long: 90, wide: 30 });
  expect(startAtSeam(finger, 12)).toEqual(finger);
});

test('without a straight side, starts at the curve of greatest radius', () => {
  const moon = crescent.draw({ across: 89, thick: 35 });
  const start = first(startAtSeam(moon, 12));
  expect(start.kind === 'arc' && radiusOf(start)).toBeCloseTo(44.5, 9);
  const round = circle.draw({ across: 70 });
  expect(startAtSeam(round, 12)).toEqual(round);
});

test('passes over straight sides that are too short for the tab', () => {
  const outline = acorn.draw({ high: 60 });
  expect(first(startAtSeam(outline, 5)).kind).toBe('line');
  const start = first(startAtSeam(outline, 20));
  expect(start.kind).toBe('arc');
  expect(lengthOf(start)).toBeGreaterThan(20);
});

test('refuses a tab longer than every side', () => {
  const hexagon = regularPolygon.draw({ sides: 6, side: 10 });
  const refused = () => startAtSeam(hexagon, 12);
  expect(refused).toThrow(StripError);
  expect(refused).toThrow('10 mm; got 12 mm');
});

test('is the same outline, only started elsewhere', () => {
  fc.assert(
    fc.property(anyOutline, (outline) => {
      const { segments } = startAtSeam(outline, 0);
      expect(new Set(segments)).toEqual(new Set(outline.segments));
      expect(perimeter({ ...outline, segments }) / perimeter(outline)).toBeCloseTo(1, 12);
      segments.forEach((segment, index) => {
        const next = segments[(index + 1) % segments.length];
        expect(next && segment.to.x - next.from.x).toBeCloseTo(0, 6);
        expect(next && segment.to.y - next.from.y).toBeCloseTo(0, 6);
      });
    }),
  );
});
