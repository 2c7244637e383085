import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toRadians } from '../angle.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { doubleHem } from '../edges/double-hem.js';
import { rawEdge } from '../edges/raw-edge.js';
import { singleHem } from '../edges/single-hem.js';
import { wiredEdge } from '../edges/wired-edge.js';
import type { Point } from '../outline.js';
import { point, turnedAbout } from '../point.js';
import { leastHalfAngle } from './least-half-angle.js';

// The hems beside a bend, seen from above: rectangles with the notch's slant cut off, folded in the
// plane. Nothing here knows of tan(A / 2) or of a mitre; whether the hems overlap is told by a
// separating line between two convex pieces.

/** The hem before the bend, which comes along the x axis to the corner at 0; its inside is above. */
function hemBefore(width: number, reach: number, slant: number): Point[] {
  return [point(-200, 0), point(0, 0), point(-slant * width, reach), point(-200, reach)];
}

/** The hem after the bend: the same, run the other way and bent up through the angle. */
function hemAfter(width: number, reach: number, slant: number, angle: number): Point[] {
  return hemBefore(width, reach, slant)
    .map(({ x, y }) => point(-x, y))
    .map((p) => turnedAbout(p, point(0, 0), toRadians(angle)));
}

/** How deep two convex pieces lie in each other; 0 or less if some side of either parts them. */
function depthOfOverlap(a: readonly Point[], b: readonly Point[]): number {
  const sides = [a, b].flatMap((piece) =>
    piece.map((from, index): Point => {
      const to = piece[(index + 1) % piece.length] ?? from;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      return point((from.y - to.y) / length, (to.x - from.x) / length);
    }),
  );
  return Math.min(
    ...sides
      .filter(({ x }) => Number.isFinite(x))
      .map(({ x, y }) => {
        const onto = (piece: readonly Point[]) => piece.map((p) => p.x * x + p.y * y);
        const [first, second] = [onto(a), onto(b)];
        return (
          Math.min(Math.max(...first), Math.max(...second)) -
          Math.max(Math.min(...first), Math.min(...second))
        );
      }),
  );
}

const sharp = { allowance: 0, insideRadius: 0, thickness: 0 };
const anyAngle = fc.double({ min: 5, max: 150, noNaN: true });
const anyWidth = fc.double({ min: 2, max: 10, noNaN: true });
const slantOf = (halfAngle: number) => Math.tan(toRadians(halfAngle));

describe('hems folded in the plane', () => {
  test('do not overlap if the notch is as wide as the least half-angle, or wider', () => {
    const more = fc.double({ min: 0, max: 10, noNaN: true });
    fc.assert(
      fc.property(anyAngle, anyWidth, more, (angle, width, wider) => {
        const half = leastHalfAngle({ ...sharp, angle }, singleHem(width), 'square') + wider;
        const [slant, reach] = [slantOf(Math.min(half, 89)), width];
        const before = hemBefore(width, reach, slant);
        const after = hemAfter(width, reach, slant, angle);
        expect(depthOfOverlap(before, after)).toBeLessThan(1e-9);
      }),
    );
  });

  test('overlap if it is narrower', () => {
    const share = fc.double({ min: 0, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(anyAngle, anyWidth, share, (angle, width, part) => {
        const half = part * leastHalfAngle({ ...sharp, angle }, singleHem(width), 'square');
        const before = hemBefore(width, width, slantOf(half));
        const after = hemAfter(width, width, slantOf(half), angle);
        expect(depthOfOverlap(before, after)).toBeGreaterThan(1e-4);
      }),
    );
  });

  test('that clear when they stand square clear at every other stage of closing', () => {
    const stage = fc.double({ min: 0, max: Math.PI, noNaN: true });
    fc.assert(
      fc.property(anyAngle, anyWidth, stage, (angle, width, fold) => {
        const slant = slantOf(leastHalfAngle({ ...sharp, angle }, singleHem(width), 'square'));
        const reach = width * Math.sin(fold);
        const before = hemBefore(width, reach, slant);
        expect(depthOfOverlap(before, hemAfter(width, reach, slant, angle))).toBeLessThan(1e-9);
      }),
    );
  });
});

// Workshop-technology textbooks (R. Singh, Introduction to Basic Manufacturing Processes and
// Workshop Technology, s. 18.4.3): where single hems meet at right angles both are clipped at 45.
test('at a corner of 90 degrees both hems are clipped at 45', () => {
  expect(leastHalfAngle({ ...sharp, angle: 90 }, singleHem(6), 'square')).toBeCloseTo(45, 9);
});

test('metal with a thickness and a radius: the free edges meet just at the mitre', () => {
  const anyRule = fc.record({
    thickness: fc.double({ min: 0.15, max: 0.4, noNaN: true }),
    insideRadius: fc.double({ min: 0, max: 0.5, noNaN: true }),
    factor: fc.double({ min: 0.3, max: 0.5, noNaN: true }),
  });
  fc.assert(
    fc.property(anyAngle, anyWidth, anyRule, (angle, width, metal) => {
      const { insideRadius, thickness, allowance } = { ...metal, ...neutralAxis(metal) };
      const bend = { angle, insideRadius, thickness, allowance: allowance(angle) };
      const half = leastHalfAngle(bend, singleHem(width), 'square');
      // Walk from the bend mark: back along the flat to the free edge's end; the bend's arc about
      // its centre, which lies above the end of the flat; the same after it.
      const flat = bend.allowance / 2;
      const off = width * slantOf(half) - flat;
      const before = point(-off, width);
      const centre = point(0, insideRadius);
      const after = turnedAbout(point(off, width), centre, toRadians(angle));
      expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeLessThan(1e-9);
    }),
  );
});

test('a hem that is closed before it is bent needs room for its metal only', () => {
  const bend = { angle: 90, allowance: 0, insideRadius: 0, thickness: 0.3 };
  const gap = (edge: ReturnType<typeof rawEdge>) =>
    slantOf(leastHalfAngle(bend, edge, 'closed')) * edge.foldedWidth;
  expect(gap(singleHem(6))).toBeCloseTo(0.3, 9);
  expect(gap(doubleHem(6))).toBeCloseTo(0.6, 9);
  expect(gap(wiredEdge(2))).toBeCloseTo(2.3, 9);
});

test('a raw edge needs no notch', () => {
  expect(leastHalfAngle({ ...sharp, angle: 90 }, rawEdge(), 'square')).toBe(0);
});
