import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../any-outline.test.support.js';
import type { Point } from '../outline.js';
import { distance, point, turnedAbout } from '../point.js';
import { moved } from './motion.js';
import { placeBest } from './place-best.js';

const anyPoints = fc.array(
  fc.record({ x: between(-100, 100), y: between(-100, 100), weight: between(0.1, 1) }),
  { minLength: 3, maxLength: 12 },
);

function squares(points: readonly Point[], targets: readonly Point[], weights: readonly number[]) {
  return points.reduce(
    (sum, p, index) => sum + (weights[index] ?? 0) * distance(p, targets[index] ?? p) ** 2,
    0,
  );
}

test('a figure that was only moved and turned is laid on exactly', () => {
  fc.assert(
    fc.property(anyPoints, between(-3, 3), between(-50, 50), (points, angle, x) => {
      const targets = points.map((p) => turnedAbout(point(p.x + x, p.y - x), point(7, 1), angle));
      const weights = points.map(({ weight }) => weight);
      moved(points, placeBest(points, targets, weights)).forEach((p, index) => {
        expect(distance(p, targets[index] ?? point(0, 0))).toBeLessThan(1e-9);
      });
    }),
  );
});

test('no other turn or move makes the sum of squares less', () => {
  fc.assert(
    fc.property(
      anyPoints,
      anyPoints,
      between(-0.1, 0.1),
      between(-1, 1),
      between(-1, 1),
      (points, others, angle, x, y) => {
        const targets = points.map((_, index) => others[index % others.length] ?? point(0, 0));
        const weights = points.map(({ weight }) => weight);
        const best = moved(points, placeBest(points, targets, weights));
        const other = best.map((p) => turnedAbout(point(p.x + x, p.y + y), point(0, 0), angle));
        const least = squares(best, targets, weights);
        expect(squares(other, targets, weights)).toBeGreaterThanOrEqual(least - 1e-9 * least);
      },
    ),
  );
});

// By hand: the target is the middle of three points on a line lifted by 3. With equal weights the
// line rises by 1.
test('the centroids meet', () => {
  const points = [point(-1, 0), point(0, 0), point(1, 0)];
  const motion = placeBest(points, [point(-1, 0), point(0, 3), point(1, 0)], [1, 1, 1]);
  expect(motion.angle).toBeCloseTo(0, 12);
  expect(motion.x).toBeCloseTo(0, 12);
  expect(motion.y).toBeCloseTo(1, 12);
});
