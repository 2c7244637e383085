import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutline } from './any-outline.test.support.js';
import { closedPolygon } from './outlines/closed-polygon.js';
import { point } from './point.js';
import { arc, cubic } from './segment.js';
import {
  corners,
  measuredPath,
  stretchAfter,
  stretchBefore,
  stretchesAfterAll,
  turnWithin,
} from './smooth-stretch.js';

const triangle = measuredPath(closedPolygon([point(0, 0), point(30, 0), point(0, 40)]));

test('a stretch ends at a corner', () => {
  expect(stretchAfter(triangle, 0, 100, 0.1)).toEqual({ reached: 30, turn: 0 });
  expect(stretchAfter(triangle, 0, 20, 0.1)).toEqual({ reached: 20, turn: 0 });
  expect(stretchBefore(triangle, 20, 0.1)).toEqual({ reached: 0, turn: 0 });
  expect(corners(triangle, 0.1)).toEqual([0, 1, 2]);
});

test('joints that count as smooth are turned through', () => {
  // The second corner of this 3-4-5 triangle turns through pi less the angle whose tangent is 4/3.
  const { reached, turn } = stretchAfter(triangle, 0, 31, 2.3);
  expect(reached).toBeCloseTo(31, 9);
  expect(turn).toBeCloseTo(Math.PI - Math.atan2(4, 3), 9);
  expect(stretchAfter(triangle, 0, 1000, 4).reached).toBeCloseTo(120, 9);
});

describe('the turn within a segment', () => {
  test('is in proportion to the length on an arc', () => {
    expect(turnWithin(arc(point(20, 0), point(0, 0), -3), 10, 30)).toBeCloseTo(1, 9);
  });

  test('counts both ways of an S, which turns nowhere in all', () => {
    const s = cubic(point(0, 0), point(30, 40), point(60, -40), point(90, 0));
    expect(turnWithin(s, 0, 1e9)).toBeGreaterThan(2);
  });
});

test('all at once is the same as one by one', () => {
  const length = fc.double({ min: 0, max: 300, noNaN: true });
  const smooth = fc.constantFrom(1e-6, 0.3, 4);
  fc.assert(
    fc.property(anyOutline, length, smooth, (outline, asked, angle) => {
      const measured = measuredPath(outline.segments);
      stretchesAfterAll(measured, asked, angle).forEach(({ reached, turn }, start) => {
        const one = stretchAfter(measured, start, asked, angle);
        expect(reached).toBeCloseTo(one.reached, 5);
        // On lines and arcs, to which the turn is in proportion.
        if (outline.segments.every(({ kind }) => kind === 'line' || kind === 'arc')) {
          // A joint just where the stretch ends may count or not.
          const after = stretchAfter(measured, start, asked + 1e-5, angle);
          const before = stretchAfter(measured, start, asked - 1e-5, angle);
          expect(turn).toBeGreaterThan(before.turn - 1e-4);
          expect(turn).toBeLessThan(after.turn + 1e-4);
        }
      });
    }),
  );
});
