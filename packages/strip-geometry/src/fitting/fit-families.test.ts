import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import { bounds, perimeter } from '../measure.js';
import type { Outline, Point } from '../outline.js';
import { families } from '../outlines/families.js';
import type { OutlineFamily } from '../outlines/family.js';
import { distance } from '../point.js';
import { scaled, turned } from '../transform.js';
import { FITTING_TOLERANCE, fitTrace } from './fit-trace.js';
import { corners, farthestFrom, polyline, tracedPoints } from './traced.test.support.js';

/** How a trace is made: turned, sampled, and each point put off at random or onto a grid. */
interface Tracing {
  readonly size: number;
  readonly angle: number;
  readonly spacing: number;
  readonly noise: number;
  /** Width of the squares whose corners the points are put on, or 0. */
  readonly pixel: number;
  readonly seed: number;
}

/**
 * Sizes and steps as cutters are traced. The points are no farther apart than
 * a fortieth of the size: a coarser trace has lost its small curves.
 */
const anyTracing: fc.Arbitrary<Tracing> = fc
  .record({
    size: between(30, 200),
    angle: between(0, 2 * Math.PI),
    share: between(0, 1),
    off: fc.oneof(
      between(0, 0.1).map((noise) => ({ noise, pixel: 0 })),
      between(0.02, 0.1).map((pixel) => ({ noise: 0, pixel })),
    ),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ size, angle, share, off, seed }) => {
    const coarsest = Math.min(2, size / 40);
    return { size, angle, spacing: 0.2 + share * (coarsest - 0.2), seed, ...off };
  });

function drawnAs(family: OutlineFamily, { size, angle }: Tracing): Outline {
  const drawn = family.draw(family.example);
  const { across, high } = bounds(drawn);
  return turned(scaled(drawn, size / Math.max(across, high)), angle);
}

function tracedAs(drawn: Outline, { spacing, noise, pixel, seed }: Tracing): Outline {
  const points = tracedPoints(drawn, perimeter(drawn) / spacing, noise, seed);
  if (pixel === 0) {
    return polyline(points);
  }
  const snapped = points.map(({ x, y }): Point => {
    return { x: Math.round(x / pixel) * pixel, y: Math.round(y / pixel) * pixel };
  });
  const isNew = (p: Point, index: number) => distance(p, snapped.at(index - 1) ?? p) > pixel / 2;
  return polyline(snapped.filter(isNew));
}

/** Most pieces that a fit may have: twice those that were drawn, and six; an ellipse is no arc. */
function mostPieces({ name, segments }: Outline): number {
  return name === 'ellipse' ? 18 : 2 * segments.length + 6;
}

test.each(families.map((family) => [family.name, family] as const))(
  '%s: any trace is fitted within the tolerance in few pieces, with its corners',
  (_, family) => {
    fc.assert(
      fc.property(anyTracing, (tracing) => {
        const drawn = drawnAs(family, tracing);
        const trace = tracedAs(drawn, tracing);
        const fitted = fitTrace(trace);
        expect(fitted.segments.length).toBeLessThanOrEqual(mostPieces(drawn));
        expect(farthestFrom(fitted, trace)).toBeLessThanOrEqual(FITTING_TOLERANCE);
        expect(farthestFrom(trace, fitted)).toBeLessThanOrEqual(FITTING_TOLERANCE);
        expect(Math.abs(perimeter(fitted) / perimeter(drawn) - 1)).toBeLessThan(0.015);
        const wanted = corners(drawn).filter(({ turn }) => Math.abs(turn) >= 45);
        const found = corners(fitted);
        for (const { at } of wanted) {
          expect(Math.min(...found.map((corner) => distance(corner.at, at)))).toBeLessThan(0.8);
        }
        // It runs on smoothly everywhere else.
        for (const { at } of found.filter(({ turn }) => Math.abs(turn) >= 30)) {
          const distances = corners(drawn).map((corner) => distance(corner.at, at));
          expect(Math.min(...distances)).toBeLessThan(1.5);
        }
      }),
      { numRuns: 5, endOnFailure: true },
    );
  },
);

const STRAIGHT = ['regular polygon', 'star', 'plus sign', 'arrow', 'tree', 'house', 'polygon'];

test.each(families.filter(({ name }) => STRAIGHT.includes(name)).map((f) => [f.name, f] as const))(
  '%s: a trace along straight sides is the polygon again, to a hundredth of a millimetre',
  (_, family) => {
    const tracing = { size: 80, angle: 1, spacing: 0.7, noise: 0, pixel: 0, seed: 1 };
    const drawn = drawnAs(family, tracing);
    const fitted = fitTrace(tracedAs(drawn, tracing));
    expect(fitted.segments.map(({ kind }) => kind)).toEqual(drawn.segments.map(() => 'line'));
    for (const { at } of corners(drawn)) {
      expect(Math.min(...corners(fitted).map((found) => distance(found.at, at)))).toBeLessThan(
        0.01,
      );
    }
  },
);

test('a trace with teeth of its own is left as it is, or gets few corners where they are shallow', () => {
  const toothed = (depth: number) =>
    polyline(
      Array.from({ length: 300 }, (_, index) => {
        const radius = 40 + (index % 2) * depth;
        const angle = (2 * Math.PI * index) / 300;
        return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
      }),
    );
  const trace = toothed(1);
  expect(fitTrace(trace)).toBe(trace);
  expect(fitTrace(toothed(0.15)).segments).toHaveLength(1);
});
