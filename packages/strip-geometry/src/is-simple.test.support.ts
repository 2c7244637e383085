import { sidesTouch } from './crossing.js';
import type { Line, Outline, Point } from './outline.js';
import { polar } from './point.js';
import { line, radiusOf } from './segment.js';

const CHORDS = 24;

/** Whether the outline, with each arc drawn as chords, never touches or crosses itself. */
export function isSimple(outline: Outline): boolean {
  const sides = chordsOf(outline);
  return sides.every((side, index) =>
    sides.every((other, otherIndex) => {
      const apart = Math.abs(index - otherIndex);
      const neighbours = apart <= 1 || apart === sides.length - 1;
      return neighbours || !sidesTouch(side, other);
    }),
  );
}

function chordsOf({ segments }: Outline): Line[] {
  const points = segments.flatMap((segment): Point[] => {
    if (segment.kind === 'line') {
      return [segment.from];
    }
    const { from, centre, sweep } = segment;
    const start = Math.atan2(from.y - centre.y, from.x - centre.x);
    return Array.from({ length: CHORDS }, (_, step) =>
      polar(centre, radiusOf(segment), start + (sweep * step) / CHORDS),
    );
  });
  return points.map((p, index) => line(p, points[(index + 1) % points.length] ?? p));
}
