import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutline } from './any-outline.test.support.js';
import { checkOutline } from './check-outline.js';
import { perimeter, signedArea } from './measure.js';
import type { Outline } from './outline.js';
import { acorn } from './outlines/acorn.js';
import { circle } from './outlines/circle.js';
import { closedPolygon } from './outlines/closed-polygon.js';
import { crescent } from './outlines/crescent.js';
import { ellipse } from './outlines/ellipse.js';
import { heart } from './outlines/heart.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { point, turnedAbout } from './point.js';
import { placeSeam, startAtSeam } from './seam.js';
import { arc, lengthOf, radiusOf } from './segment.js';
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

describe('a seam that is put where the user asks', () => {
  const tab = { name: 'tab', overlap: 12, flatBefore: 0 };
  const hexagon = regularPolygon.draw({ sides: 6, side: 30 });

  test('at a corner, counted from the start of the drawing', () => {
    hexagon.segments.forEach((segment, index) => {
      expect(first(placeSeam(hexagon, tab, { corner: index + 1 }))).toBe(segment);
    });
  });

  test('smooth joints are not counted as corners', () => {
    const rounded = rectangle.draw({ long: 90, wide: 40, 'corner radius': 8 });
    expect(() => placeSeam(rounded, tab, { corner: 1 })).toThrow('no corner');
    expect(first(placeSeam(heart.draw({ across: 100 }), tab, { corner: 1 })).from).toEqual(
      point(0, 0),
    );
    expect(() => placeSeam(heart.draw({ across: 100 }), tab, { corner: 3 })).toThrow('1 to 2');
    // Two sides that meet at 1 degree are one side where corners begin at 2.
    const bent = closedPolygon([point(0, 0), point(50, 0), point(100, -0.9), point(50, 80)]);
    const seamAt = { corner: 2 };
    expect(first(placeSeam({ name: 'bent', segments: bent }, tab, seamAt)).from.x).toBe(50);
    expect(first(placeSeam({ name: 'bent', segments: bent }, tab, seamAt, 2)).from.x).toBe(100);
  });

  test('at a distance along the outline', () => {
    const middle = placeSeam(hexagon, tab, { distance: 45 });
    expect(middle.segments).toHaveLength(7);
    const [before, after] = [middle.segments.at(-1), first(middle)];
    expect(before && lengthOf(before)).toBeCloseTo(15, 9);
    expect(lengthOf(after)).toBeCloseTo(15, 9);
    expect(perimeter(middle)).toBeCloseTo(180, 9);
    expect(placeSeam(hexagon, tab, { distance: 0 })).toEqual(hexagon);
    expect(placeSeam(hexagon, tab, { distance: 180 })).toEqual(hexagon);
    expect(placeSeam(hexagon, tab, { distance: 60 }).segments).toHaveLength(6);
  });

  test('in the middle of the longest flat, with as much flat on either side of the tab', () => {
    const finger = rectangle.draw({ long: 90, wide: 30 });
    const start = first(placeSeam(finger, tab, 'middle of the longest flat'));
    expect(lengthOf(start)).toBeCloseTo(90 - (90 - 12) / 2, 9);
    const round = circle.draw({ across: 70 });
    expect(() => placeSeam(round, tab, 'middle of the longest flat')).toThrow('no flat');
  });

  test.each([
    ['a corner too near', hexagon, { distance: 20 }, '10 mm'],
    ['no such corner', hexagon, { corner: 7 }, '1 to 6'],
    ['half a corner', hexagon, { corner: 1.5 }, '1 to 6'],
    ['beyond the end', hexagon, { distance: 180.1 }, '180 mm'],
    ['before the start', hexagon, { distance: -1 }, 'got -1 mm'],
    ['not a number', hexagon, { distance: Number.NaN }, 'got NaN mm'],
    ['a tight curve', circle.draw({ across: 14 }), { distance: 5 }, '98.2'],
  ])('is refused: %s', (_, outline, seamAt, text) => {
    const refused = () => placeSeam(outline, tab, seamAt);
    expect(refused).toThrow(expect.objectContaining({ name: 'StripError', field: 'seamAt' }));
    expect(refused).toThrow(text);
  });

  test('any distance leaves the outline the same, started elsewhere', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyOutline, part, (outline, share) => {
        const once = perimeter(outline);
        const butt = { name: 'butt joint', overlap: 0, flatBefore: 0 };
        const placed = placeSeam(outline, butt, { distance: share * once });
        expect(perimeter(placed) / once).toBeCloseTo(1, 9);
        expect(signedArea(placed) / signedArea(outline)).toBeCloseTo(1, 9);
        expect(() => checkOutline(placed)).not.toThrow();
      }),
    );
  });
});

test('on an ellipse the seam lies in the middle of a long side', () => {
  const outline = ellipse.draw({ across: 90, high: 40 });
  const { from } = first(startAtSeam(outline, 8));
  // Half the seam, 4 mm, before the end of the short axis, where the curve turns least.
  expect(Math.abs(from.x)).toBeCloseTo(4, 1);
  expect(Math.abs(from.y)).toBeCloseTo(20, 0);
});

describe('a seam is never put across a tight curve', () => {
  test('a tab on a small round cutter', () => {
    // 12 mm of a circle of radius 7 turn through 12 / 7 radians, 98.2 degrees.
    const refused = () => startAtSeam(circle.draw({ across: 14 }), 12);
    expect(refused).toThrow(expect.objectContaining({ name: 'StripError', field: 'tab' }));
    expect(refused).toThrow('98.2');
    // On a radius of 8 they turn through 85.9.
    expect(() => startAtSeam(circle.draw({ across: 16 }), 12)).not.toThrow();
  });

  test('sides shorter than the tab will do where they join smoothly', () => {
    const round = circle.draw({ across: 70 });
    const pieces = Array.from({ length: 60 }, (_, index) => {
      const from = turnedAbout(point(35, 0), point(0, 0), (index * Math.PI) / 30);
      return arc(from, point(0, 0), Math.PI / 30);
    });
    const start = startAtSeam({ ...round, segments: pieces }, 12);
    expect(lengthOf(first(start))).toBeLessThan(12);
    expect(start.segments).toHaveLength(60);
  });
});

test('a seam that needs room on either side goes to the middle of the longest side', () => {
  const finger = rectangle.draw({ long: 90, wide: 30 });
  const grooved = { name: 'grooved seam', overlap: 4, flatBefore: 4 };
  const start = placeSeam(finger, grooved);
  expect(lengthOf(first(start))).toBeCloseTo(47, 9);
  expect(() => placeSeam(finger, grooved, { corner: 1 })).toThrow('without a corner before');
  const small = regularPolygon.draw({ sides: 6, side: 11 });
  expect(() => placeSeam(small, grooved)).toThrow('11 mm; got 12 mm');
});
