import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  anyEllipse,
  anySegment,
  anySmoothOutline,
  pointByDefinition,
} from '../any-curve.test.support.js';
import { anyOutline } from '../any-outline.test.support.js';
import type { Outline, Point, Segment } from '../outline.js';
import { minus, point, turnFrom } from '../point.js';
import {
  cubic,
  ellipticalArc,
  quadratic,
  reversed,
  tightestRadius,
  totalTurn,
  turnAtJoint,
} from '../segment.js';
import { selfCrossing } from '../self-crossing.js';
import { inflections } from './inflections.js';

const STEPS = 4000;

/** The turns between chords, added up: knows no derivative and counts past a half turn. */
function turnOfChords(segment: Segment): number {
  const points = Array.from({ length: STEPS + 1 }, (_, step) => place(segment, step / STEPS));
  const chords = points.slice(1).map((p, index) => minus(p, points[index] ?? p));
  return chords.slice(1).reduce((sum, chord, i) => sum + turnFrom(chords[i] ?? chord, chord), 0);
}

/** Chords grow shorter toward the ends, where drawn-in handles turn fast. */
function place(segment: Segment, share: number): Point {
  return pointByDefinition(segment, share * share * (3 - 2 * share));
}

test('the turn is what chords turn through', () => {
  fc.assert(
    fc.property(anySegment, (segment) => {
      // Tighter hairpins need finer chords.
      fc.pre(tightestRadius(segment) > 0.2 || hasDrawnInHandle(segment));
      expect(Math.abs(totalTurn(segment) - turnOfChords(segment))).toBeLessThan(0.1);
      expect(totalTurn(reversed(segment))).toBeCloseTo(-totalTurn(segment), 9);
    }),
    { numRuns: 300 },
  );
});

function hasDrawnInHandle(segment: Segment): boolean {
  if (segment.kind !== 'cubic') {
    return false;
  }
  const { from, control1, control2, to } = segment;
  // Moved off the end by a little, the rest of the curve is all but the same.
  const off = (end: Point, other: Point) =>
    point(end.x + (other.x - end.x) * 0.05, end.y + (other.y - end.y) * 0.05);
  const opened = cubic(
    from,
    control1 === from ? off(from, control2) : control1,
    control2 === to ? off(to, control1) : control2,
    to,
  );
  return (control1 === from || control2 === to) && tightestRadius(opened) > 0.2;
}

describe('closed forms', () => {
  test('ellipses turn as far as their sweep at every quarter', () => {
    const sizes = { centre: point(1, 2), radiusX: 9, radiusY: 2, rotation: 0.7, start: 0 };
    for (const quarters of [1, 2, 3, 4]) {
      const sweep = (quarters * Math.PI) / 2;
      expect(totalTurn(ellipticalArc({ ...sizes, sweep }))).toBeCloseTo(sweep, 12);
      expect(totalTurn(ellipticalArc({ ...sizes, sweep: -sweep }))).toBeCloseTo(-sweep, 12);
    }
    // At t the heading of (a cos t, b sin t) has the slope -b / (a tan t).
    const eighth = ellipticalArc({ ...sizes, rotation: 0, sweep: Math.PI / 4 });
    expect(totalTurn(eighth)).toBeCloseTo(Math.PI / 2 - Math.atan(2 / 9), 12);
  });

  test('a parabola from slope to slope', () => {
    const parabola = quadratic(point(-1, 1), point(0, -1), point(1, 1));
    expect(totalTurn(parabola)).toBeCloseTo(2 * Math.atan(2), 12);
  });

  test('a loop turns past a half turn', () => {
    const loop = cubic(point(0, 0), point(30, 20), point(-20, 20), point(10, 0));
    expect(totalTurn(loop)).toBeCloseTo(2 * Math.PI - 2 * Math.atan(2 / 3), 12);
  });

  test('an S turns back as far as it turned', () => {
    const ess = cubic(point(0, 0), point(10, 0), point(0, 10), point(10, 10));
    expect(totalTurn(ess)).toBeCloseTo(0, 12);
    expect(inflections(ess)).toEqual([0.5]);
    expect(inflections(quadratic(point(0, 0), point(5, 5), point(10, 0)))).toEqual([]);
    expect(inflections(cubic(point(0, 0), point(0, 5), point(10, 5), point(10, 0)))).toEqual([]);
  });
});

/** Turned through in all, at joints and between them. */
function turningOf({ segments }: Outline): number {
  return segments.reduce((sum, segment, index) => {
    const next = segments[(index + 1) % segments.length] ?? segment;
    return sum + totalTurn(segment) + turnAtJoint(segment, next);
  }, 0);
}

// Theorem of turning tangents (Hopf's Umlaufsatz): a simple closed curve run anticlockwise turns
// through 360 degrees.
test('simple closed outlines turn through a full turn', () => {
  let simple = 0;
  fc.assert(
    fc.property(fc.oneof(anySmoothOutline, anyEllipse, anyOutline), (outline) => {
      fc.pre(selfCrossing(outline.segments) === undefined);
      simple++;
      expect(turningOf(outline)).toBeCloseTo(2 * Math.PI, 6);
    }),
    { numRuns: 300 },
  );
  expect(simple).toBeGreaterThan(100);
});
