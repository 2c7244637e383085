import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipPolygon, clipStretch } from './clip.js';
import type { Point } from './drawing.js';

const box = { x: 0, y: 0, width: 10, height: 5 };
const at = (x: number, y: number): Point => ({ x, y });

/** The shoelace formula. */
const area = (points: readonly Point[]): number =>
  points.reduce((sum, { x, y }, index) => {
    const before = points.at(index - 1) ?? at(0, 0);
    return sum + (before.x * y - x * before.y) / 2;
  }, 0);

describe('clipping', () => {
  it('keeps a polygon inside as it is, and leaves nothing of one outside', () => {
    const triangle = [at(1, 1), at(4, 1), at(1, 4)];
    expect(clipPolygon(triangle, box)).toEqual(triangle);
    expect(
      clipPolygon(
        triangle.map(({ x, y }) => at(x + 20, y)),
        box,
      ),
    ).toEqual([]);
  });

  it('keeps what a rectangle shares with the box', () => {
    const side = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(side, side, side, side, (x, y, width, height) => {
        const [a, b] = [Math.abs(width), Math.abs(height)];
        const corners = [at(x, y), at(x + a, y), at(x + a, y + b), at(x, y + b)];
        const wide = Math.max(0, Math.min(x + a, 10) - Math.max(x, 0));
        const high = Math.max(0, Math.min(y + b, 5) - Math.max(y, 0));
        expect(area(clipPolygon(corners, box))).toBeCloseTo(wide * high, 6);
      }),
    );
  });

  it('cuts a stretch at the sides', () => {
    expect(clipStretch(at(-5, 2), at(20, 2), box)).toEqual([at(0, 2), at(10, 2)]);
    expect(clipStretch(at(2, 2), at(3, 4), box)).toEqual([at(2, 2), at(3, 4)]);
    expect(clipStretch(at(-1, -1), at(12, -1), box)).toBeUndefined();
    expect(clipStretch(at(-4, 0), at(0, 9), box)).toBeUndefined();
  });
});
