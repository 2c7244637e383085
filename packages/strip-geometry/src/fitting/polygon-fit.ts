import { toRadians } from '../angle.js';
import type { Line, Outline, Point } from '../outline.js';
import { lengthOf, turnAtJoint } from '../segment.js';
import { fewestCorners } from './fewest-corners.js';
import { asFit, type Trace } from './trace.js';

/** Shares of the tolerance that are tried; a tight one where sides of a loose one would cross. */
const SHARES = [0.95, 0.5, 0.2];

/** Within this share of the tolerance a polygon is as good as drawn. */
const EXACT = 0.01;

/** Corners of a polygon that is meant as one turn by this or more; those of a curve turn less. */
const LEAST_CORNER = toRadians(15);

/** A trace has this many points to a side, or more. */
const POINTS_A_SIDE = 4;

/** Sides shorter than this many tolerances may be the steps of a raster. */
const SHORTEST = 5;

/** The polygon with few corners, all on the trace, that keeps within the tolerance. */
export function polygonFit(trace: Trace): Outline | undefined {
  for (const share of SHARES) {
    const fitted = asFit(trace, sidesOf(trace, share));
    if (fitted !== undefined) {
      return fitted;
    }
  }
  return undefined;
}

/** The polygon that was traced, for a trace of nothing but straight sides with points on them. */
export function tracedPolygon(trace: Trace): Outline | undefined {
  const sides = sidesOf(trace, EXACT);
  const isMeant = sides.every((side, index) => {
    const next = sides[(index + 1) % sides.length] ?? side;
    const isCorner = Math.abs(turnAtJoint(side, next)) >= LEAST_CORNER;
    return isCorner && lengthOf(side) >= SHORTEST * trace.tolerance;
  });
  const isFew = sides.length * POINTS_A_SIDE <= trace.outline.segments.length;
  return isMeant && isFew ? asFit(trace, sides) : undefined;
}

function sidesOf({ outline, tolerance }: Trace, share: number): readonly Line[] {
  const points = fromSharpest(outline);
  const corners = fewestCorners(points, share * tolerance).flatMap(
    (number) => points[number] ?? [],
  );
  return corners.map((from, index) => ({
    kind: 'line',
    from,
    to: corners[(index + 1) % corners.length] ?? from,
  }));
}

/** The points between the segments, from the one on at which they turn most. */
function fromSharpest({ segments }: Outline): readonly Point[] {
  let [sharpest, most] = [0, -1];
  segments.forEach((segment, index) => {
    const turn = Math.abs(turnAtJoint(segments.at(index - 1) ?? segment, segment));
    if (turn > most) {
      [sharpest, most] = [index, turn];
    }
  });
  const points = segments.map(({ from }) => from);
  return [...points.slice(sharpest), ...points.slice(0, sharpest)];
}
