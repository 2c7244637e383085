import type { Line, Point } from '../outline.js';
import { line } from '../segment.js';

/** The straight sides from corner to corner and back to the first. */
export function closedPolygon(corners: readonly Point[]): Line[] {
  return corners.map((corner, index) =>
    line(corner, corners[(index + 1) % corners.length] ?? corner),
  );
}
