import type { Box, Point } from './drawing.js';

/**
 * What of a polygon lies in a box (Sutherland and Hodgman, Reentrant Polygon Clipping, 1974).
 * Parts of one that falls apart stay joined along the edge of the box; empty where nothing is left.
 */
export function clipPolygon(points: readonly Point[], box: Box): readonly Point[] {
  return sidesOf(box).reduce<readonly Point[]>(
    (left, depth) =>
      left.flatMap((to, index) => {
        const from = left.at(index - 1) ?? to;
        const [before, here] = [depth(from), depth(to)];
        if (before >= 0 === here >= 0) return here >= 0 ? [to] : [];
        const crossing = between(from, to, before / (before - here));
        return here >= 0 ? [crossing, to] : [crossing];
      }),
    points,
  );
}

/**
 * What of a stretch lies in a box: the part between the crossings with its sides
 * (Liang and Barsky, 1984); undefined where nothing is left.
 */
export function clipStretch(from: Point, to: Point, box: Box): readonly [Point, Point] | undefined {
  let [start, end] = [0, 1];
  for (const depth of sidesOf(box)) {
    const [before, after] = [depth(from), depth(to)];
    if (before < 0 && after < 0) return undefined;
    if (before < 0) start = Math.max(start, before / (before - after));
    if (after < 0) end = Math.min(end, before / (before - after));
  }
  return start > end ? undefined : [between(from, to, start), between(from, to, end)];
}

/** How deep a point lies inside each side. */
function sidesOf({ x, y, width, height }: Box): readonly ((point: Point) => number)[] {
  return [
    (point) => point.x - x,
    (point) => x + width - point.x,
    (point) => point.y - y,
    (point) => y + height - point.y,
  ];
}

function between(from: Point, to: Point, share: number): Point {
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}
