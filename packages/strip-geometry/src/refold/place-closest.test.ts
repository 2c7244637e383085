import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import type { Point } from '../outline.js';
import { distance, point, turnedAbout } from '../point.js';
import { moved } from './motion.js';
import { placeBest } from './place-best.js';
import { placeClosest } from './place-closest.js';

const anyPoints = fc.array(
  fc.record({ x: between(-100, 100), y: between(-100, 100), weight: between(0.1, 1) }),
  { minLength: 3, maxLength: 12 },
);

function farthest(points: readonly Point[], targets: readonly Point[]): number {
  return Math.max(...points.map((p, index) => distance(p, targets[index] ?? p)));
}

/** The points, each moved by up to 2 mm, all turned and moved. */
const anyPair = fc
  .record({ points: anyPoints, angle: between(-3, 3), off: fc.array(between(-2, 2)) })
  .map(({ points, angle, off }) => ({
    points,
    weights: points.map(({ weight }) => weight),
    targets: points.map((p, index) =>
      turnedAbout(point(p.x + (off[index] ?? 0), p.y - 3), point(7, 1), angle),
    ),
  }));

test('no other turn or move brings the farthest point nearer', () => {
  fc.assert(
    fc.property(
      anyPair,
      between(-0.02, 0.02),
      between(-1, 1),
      between(-1, 1),
      ({ points, targets, weights }, angle, x, y) => {
        const { points: placed, largest } = placeClosest(points, targets, weights);
        const other = placed.map((p) => turnedAbout(point(p.x + x, p.y + y), point(0, 0), angle));
        // True to a few parts in a thousand.
        expect(farthest(other, targets)).toBeGreaterThan(largest * 0.99 - 1e-9);
      },
    ),
    { numRuns: 300 },
  );
});

test('nor does that of least squares', () => {
  fc.assert(
    fc.property(anyPair, ({ points, targets, weights }) => {
      const squares = moved(points, placeBest(points, targets, weights));
      const { largest } = placeClosest(points, targets, weights);
      expect(largest).toBeLessThanOrEqual(farthest(squares, targets) + 1e-12);
    }),
  );
});

// By hand: the target is the middle of three points on a line lifted by 3. The line rises by half
// of it, so that all three are 1.5 off.
test('tells the largest deviation and where it is', () => {
  const points = [point(-1, 0), point(0, 0), point(1, 0)];
  const targets = [point(-1, 0), point(0, 3), point(1, 0)];
  const { points: placed, largest, worst } = placeClosest(points, targets, [1, 1, 1]);
  expect(largest).toBeCloseTo(1.5, 2);
  expect(distance(placed[worst] ?? point(0, 0), targets[worst] ?? point(0, 0))).toBe(largest);
});

test('a figure that was only moved and turned is laid on exactly', () => {
  const points = [point(0, 0), point(30, 0), point(12, 20)];
  const targets = points.map((p) => turnedAbout(p, point(5, 5), 2));
  expect(placeClosest(points, targets, [1, 1, 1]).largest).toBeLessThan(1e-9);
});
