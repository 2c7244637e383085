import { sampled } from './any-curve.test.support.js';
import type { Outline, Point } from './outline.js';

const CHORDS = 24;

/**
 * Whether the outline, with each curve drawn as chords, never crosses itself. By
 * the signs of triangles alone, so that it owes nothing to `crossing.ts`.
 */
export function isSimple(outline: Outline, chords = CHORDS): boolean {
  const points = chordsOf(outline, chords);
  const side = (index: number) => [points[index], points[(index + 1) % points.length]] as const;
  return points.every((_, first) =>
    points.every((__, second) => !properlyCross(side(first), side(second))),
  );
}

type Side = readonly [Point | undefined, Point | undefined];

function properlyCross([a, b]: Side, [c, d]: Side): boolean {
  if (!a || !b || !c || !d) {
    throw new Error('a side without ends');
  }
  const sign = (p: Point, q: Point, r: Point) =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return sign(a, b, c) * sign(a, b, d) < 0 && sign(c, d, a) * sign(c, d, b) < 0;
}

function chordsOf({ segments }: Outline, chords: number): Point[] {
  return segments.flatMap((segment): Point[] => {
    if (segment.kind === 'line') {
      return [segment.from];
    }
    return sampled(segment, chords).slice(0, chords);
  });
}
