import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyOutline, between } from './any-outline.test.support.js';
import { checkOutline } from './check-outline.js';
import type { Outline, Segment } from './outline.js';
import { OutlineError, type OutlineFault } from './outline-error.js';
import { closedPolygon } from './outlines/closed-polygon.js';
import { point } from './point.js';
import { arc, line, reversedPath } from './segment.js';
import { mirrored, turned } from './transform.js';

const [a, b, c] = [point(0, 0), point(4, 0), point(0, 3)];
const triangle = closedPolygon([a, b, c]);

function faultOf(segments: readonly Segment[]): OutlineError {
  try {
    checkOutline({ name: 'trial', segments });
  } catch (error) {
    if (error instanceof OutlineError) {
      return error;
    }
    throw error;
  }
  throw new Error('the outline passed');
}

test('every family draws sound outlines, and they stay sound when turned or mirrored', () => {
  fc.assert(
    fc.property(anyOutline, between(-7, 7), (outline, angle) => {
      checkOutline(outline);
      checkOutline(mirrored(outline));
      checkOutline(turned(outline, angle));
    }),
  );
});

test('a sound outline passes', () => {
  const outline: Outline = { name: 'trial', segments: triangle };
  expect(() => checkOutline(outline)).not.toThrow();
});

test.each<[string, OutlineFault, readonly Segment[], string]>([
  ['nothing', 'not closed', [], 'no segments'],
  ['a gap', 'not closed', [line(a, b), line(b, c), line(c, point(0, 1))], '(0, 1)'],
  ['the wrong way round', 'clockwise', reversedPath(triangle), '-6 square mm'],
  ['no area', 'clockwise', [line(a, b), line(b, a)], '0 square mm'],
  ['a side of no length', 'zero length', [line(a, b), line(b, b), line(b, c), line(c, a)], '0 mm'],
  ['a coordinate missing', 'not a number', [line(a, point(Number.NaN, 0))], 'NaN'],
  [
    'sides that cross',
    'crosses itself',
    closedPolygon([a, point(4, 4), point(4, 0), point(0, 2)]),
    'Segments 1 and 3 of "trial" touch or cross at (1.3333, 1.3333)',
  ],
  [
    'a curve that cuts a side',
    'crosses itself',
    // A half circle of radius 2 about (2, 1) hangs down through the base.
    [
      line(a, b),
      line(b, point(4, 1)),
      arc(point(4, 1), point(2, 1), -Math.PI),
      line(point(0, 1), a),
    ],
    'Segments 1 and 3 of "trial" touch or cross at (3.7321, 0)',
  ],
  ['an arc off its centre', 'bad arc', [{ ...arc(a, b, 1), to: c }], '(0, 3)'],
  ['an arc more than once round', 'bad arc', [arc(a, b, 7)], '6.2832'],
])('refuses %s', (_, code, segments, found) => {
  const error = faultOf(segments);
  expect(error.code).toBe(code);
  expect(error.message).toContain(found);
});
