import { isOn, sharedPoint } from '../crossing.js';
import { signedArea } from '../measure.js';
import type { Line, Point } from '../outline.js';
import { OutlineError } from '../outline-error.js';
import { distance } from '../point.js';
import { line, turnAtJoint } from '../segment.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from '../tolerance.js';
import { printPoint } from '../wording.js';
import { closedPolygon } from './closed-polygon.js';
import { defineFamily } from './define-family.js';

const FIELD = 'corners';

/**
 * A polygon through free corners, listed either way round. A corner that lies
 * on the straight line between its neighbours makes no bend and is left out.
 */
export const polygon = defineFamily({
  name: 'polygon',
  summary: 'Straight sides from corner to corner, for a shape of your own.',
  sizes: [
    {
      name: FIELD,
      kind: 'corners',
      required: true,
      meaning: 'at least 3 corners in order, either way round',
    },
  ],
  example: {
    corners: [
      { x: 0, y: 0 },
      { x: 76, y: 0 },
      { x: 76, y: 51 },
      { x: 38, y: 83 },
      { x: 0, y: 51 },
    ],
  },
  path(sizes) {
    const corners = sizes.corners(FIELD);
    if (corners.length < 3) {
      const message = `"corners" must list at least 3 corners; got ${corners.length}.`;
      throw new OutlineError('out of range', message, FIELD);
    }
    refuseRepeats(corners);
    const sides = closedPolygon(corners);
    refuseCrossings(sides);
    const anticlockwise = signedArea({ name: 'polygon', segments: sides }) > 0;
    return closedPolygon(withoutStraightCorners(anticlockwise ? corners : turnedRound(corners)));
  },
});

function refuseRepeats(corners: readonly Point[]): void {
  corners.forEach((corner, index) => {
    const earlier = corners.findIndex((other) => distance(corner, other) <= LENGTH_TOLERANCE);
    if (earlier < index) {
      const message =
        `Corner ${index + 1} repeats corner ${earlier + 1}, ${printPoint(corner)}; list each ` +
        'corner once (the last side runs back to the first corner by itself).';
      throw new OutlineError('repeated corner', message, FIELD);
    }
  });
}

function refuseCrossings(sides: readonly Line[]): void {
  const refuse = (first: number, second: number) => {
    const [a, b] = [sides[first], sides[second]];
    const where = a && b ? `, ${printSide(a)}, and ${printSide(b)}` : '';
    const message =
      `The side after corner ${first + 1} and the side after corner ${second + 1} touch or cross` +
      `${where}; a cutter's outline may not cross itself. Check the order of the corners.`;
    throw new OutlineError('crosses itself', message, FIELD);
  };
  sides.forEach((side, index) => {
    // A side that folds straight back along the one before it.
    const next = (index + 1) % sides.length;
    const after = sides[next];
    if (after !== undefined && (isOn(after.to, side) || isOn(side.from, after))) {
      refuse(Math.min(index, next), Math.max(index, next));
    }
    for (let other = index + 2; other < sides.length; other++) {
      const neighbours = index === 0 && other === sides.length - 1;
      const opposite = sides[other];
      if (opposite !== undefined && !neighbours && sharedPoint(side, opposite) !== undefined) {
        refuse(index, other);
      }
    }
  });
}

function printSide({ from, to }: Line): string {
  return `${printPoint(from)} to ${printPoint(to)}`;
}

/** The same corners the other way round, from the same first corner. */
function turnedRound([first, ...others]: readonly Point[]): Point[] {
  return first === undefined ? [] : [first, ...others.reverse()];
}

function withoutStraightCorners(corners: readonly Point[]): Point[] {
  const size = corners.length;
  return corners.filter((corner, index) => {
    const before = corners[(index + size - 1) % size] ?? corner;
    const after = corners[(index + 1) % size] ?? corner;
    const turn = turnAtJoint(line(before, corner), line(corner, after));
    return Math.abs(turn) > ANGLE_TOLERANCE;
  });
}
