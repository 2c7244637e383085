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
test.each(['closed', 'square'] as const)(
  'at a corner of 90 degrees both %s hems are clipped at 45',
  (stage) => {
    const bend = { ...sharp, thickness: 0.28, angle: 90 };
    expect(leastHalfAngle(bend, singleHem(6), stage)).toBeCloseTo(45, 9);
  },
);

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

// A closed hem at every distance h from the hem line down to its free edge: a layer of metal that
// reaches off by u = min(h, reach), since it hangs on the hem line, and ends where the V left it.
describe('a hem that is closed before it is bent', () => {
  const anyEdge = fc.constantFrom(singleHem(6), doubleHem(5), wiredEdge(2));
  const anyThickness = fc.double({ min: 0.15, max: 0.5, noNaN: true });
  const share = fc.double({ min: 0.02, max: 1, noNaN: true });

  /** The layers of metal in it and its wire, by hand. */
  function reachOf({ name }: { readonly name: string }, thickness: number): number {
    switch (name) {
      case 'single hem':
        return thickness;
      case 'double hem':
        return 2 * thickness;
      default:
        return 2 + thickness;
    }
  }

  test('does not run into itself at any distance from the hem line, in a sharp bend', () => {
    fc.assert(
      fc.property(anyAngle, anyEdge, anyThickness, share, (angle, edge, thickness, part) => {
        const half = leastHalfAngle({ ...sharp, angle, thickness }, edge, 'closed');
        const h = part * edge.foldedWidth;
        const reach = Math.min(h, reachOf(edge, thickness));
        // As wide at h as a hem of width h, so that its slant at the reach has the V's end.
        const slant = (h * slantOf(half)) / reach;
        const before = hemBefore(reach, reach, slant);
        expect(depthOfOverlap(before, hemAfter(reach, reach, slant, angle))).toBeLessThan(1e-9);
      }),
    );
  });

  test('runs into itself where its fold ends, if the notch is narrower', () => {
    const less = fc.double({ min: 0, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(anyAngle, anyEdge, anyThickness, less, (angle, edge, thickness, part) => {
        const half = part * leastHalfAngle({ ...sharp, angle, thickness }, edge, 'closed');
        const reach = reachOf(edge, thickness);
        const before = hemBefore(reach, reach, slantOf(half));
        const after = hemAfter(reach, reach, slantOf(half), angle);
        expect(depthOfOverlap(before, after)).toBeGreaterThan(1e-5);
      }),
    );
  });

  // In metal with a radius: walked from the bend mark on either side, as above. Round a bend
  // that is rounder than it reaches, the hem goes on along an arc about the same centre.
  test('meets just at the middle of the bend at the end of its fold', () => {
    const anyRule = fc.record({
      thickness: anyThickness,
      insideRadius: fc.double({ min: 0, max: 3, noNaN: true }),
      factor: fc.double({ min: 0.3, max: 0.5, noNaN: true }),
    });
    fc.assert(
      fc.property(anyAngle, anyEdge, anyRule, (angle, edge, metal) => {
        const { insideRadius, thickness, allowance } = { ...metal, ...neutralAxis(metal) };
        const bend = { angle, insideRadius, thickness, allowance: allowance(angle) };
        const reach = reachOf(edge, thickness);
        const left = reach * slantOf(leastHalfAngle(bend, edge, 'closed'));
        // How far the hem goes on past the end of the flat, less than 0 if it stops before.
        const past = bend.allowance / 2 - left;
        const centre = point(0, insideRadius);
        const round = insideRadius > reach;
        const turn = round ? (past / (insideRadius - reach)) * (180 / Math.PI) : 0;
        const before = round
          ? turnedAbout(point(0, reach), centre, toRadians(turn))
          : point(past, reach);
        const after = round
          ? turnedAbout(point(0, reach), centre, toRadians(angle - turn))
          : turnedAbout(point(-past, reach), centre, toRadians(angle));
        expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeLessThan(1e-9);
      }),
    );
  });

  test('is taken as of usual tinplate where the bend rule leaves the thickness out', () => {
    const [bench, tin] = [0, 0.3].map((thickness) =>
      leastHalfAngle(
        { angle: 100, allowance: 0.2, insideRadius: 0, thickness },
        singleHem(6),
        'closed',
      ),
    );
    expect(bench).toBeCloseTo(tin ?? 0, 9);
    // (0.3 tan 50 + 0.1) / 0.3
    expect(bench).toBeCloseTo(
      (Math.atan(Math.tan((50 * Math.PI) / 180) + 1 / 3) * 180) / Math.PI,
      9,
    );
  });
});

// Sheet Metal Work Book, 6th ed. 2012, 90-degree V notches: where two flanges meet, each is cut back
// by its outside length less half the bend deduction from the middle of the bend, the whole notch is
// twice that. A hem that stands square on the inner face is such a flange, W + T over all; the bend
// deduction is 2 (R + T) - B.
test('a notch of 90 degrees is as wide as the work book has it', () => {
  const anyRule = fc.record({
    thickness: fc.double({ min: 0.15, max: 2, noNaN: true }),
    insideRadius: fc.double({ min: 0, max: 1.9, noNaN: true }),
    factor: fc.double({ min: 0.3, max: 0.5, noNaN: true }),
  });
  fc.assert(
    fc.property(anyWidth, anyRule, (width, metal) => {
      const { insideRadius, thickness, allowance } = { ...metal, ...neutralAxis(metal) };
      const bend = { angle: 90, insideRadius, thickness, allowance: allowance(90) };
      const deduction = 2 * (insideRadius + thickness) - allowance(90);
      const half = leastHalfAngle(bend, singleHem(width), 'square');
      expect(2 * width * slantOf(half)).toBeCloseTo(2 * (width + thickness) - deduction, 9);
    }),
  );
});

test('a sharper fold never needs less, at either stage', () => {
  const stage = fc.constantFrom('closed', 'square');
  const metal = fc.record({
    thickness: fc.double({ min: 0.15, max: 0.5, noNaN: true }),
    insideRadius: fc.double({ min: 0, max: 3, noNaN: true }),
    factor: fc.double({ min: 0.3, max: 0.5, noNaN: true }),
  });
  fc.assert(
    fc.property(anyAngle, anyAngle, metal, stage, (one, other, sizes, hemStage) => {
      const { insideRadius, thickness, allowance } = { ...sizes, ...neutralAxis(sizes) };
      const [less, more] = [Math.min(one, other), Math.max(one, other)].map((angle) => {
        const bend = { angle, insideRadius, thickness, allowance: allowance(angle) };
        return leastHalfAngle(bend, singleHem(6), hemStage);
      });
      expect(more).toBeGreaterThanOrEqual((less ?? 0) - 1e-9);
    }),
  );
});

test('a raw edge needs no notch', () => {
  expect(leastHalfAngle({ ...sharp, angle: 90 }, rawEdge(), 'square')).toBe(0);
});
