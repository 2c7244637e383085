import { FULL_TURN } from '../angle.js';
import type { Arc, Line, Point } from '../outline.js';
import { distance, minus, polar } from '../point.js';
import { arcBetween, lengthOf, line } from '../segment.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';

/** A round post that the outline is laid round. */
export interface Post {
  readonly centre: Point;
  readonly radius: number;
  /** `in` where the outline turns to its inside round this post, `out` where it turns away. */
  readonly turn: 'in' | 'out';
}

/**
 * The closed path that runs round each post in turn, as a taut cord would,
 * and straight from each to the next. Posts that just touch, one turned `in`
 * and one `out`, follow each other without a straight between them.
 */
export function roundPosts(posts: readonly Post[]): (Line | Arc)[] {
  const straights = posts.map((post, index) =>
    straightBetween(post, posts[(index + 1) % posts.length] ?? post),
  );
  const path = posts.flatMap(({ centre, turn }, index) => {
    const [before, after] = [straights.at(index - 1), straights[index]];
    if (before === undefined || after === undefined) {
      return [];
    }
    const sense = turn === 'in' ? 'anticlockwise' : 'clockwise';
    return [arcBetween(before.to, after.from, centre, sense), after];
  });
  return path.filter((segment) => lengthOf(segment) > LENGTH_TOLERANCE);
}

/** The common tangent. A post lies its radius to the left of it, or to the right if turned `out`. */
function straightBetween(first: Post, second: Post): Line {
  const [left, nextLeft] = [toLeft(first), toLeft(second)];
  const apart = distance(first.centre, second.centre);
  const { x, y } = minus(second.centre, first.centre);
  const shift = nextLeft - left;
  const touching = Math.abs(apart - Math.abs(shift)) <= LENGTH_TOLERANCE;
  const slant = touching ? (Math.sign(shift) * FULL_TURN) / 4 : Math.asin(shift / apart);
  const rightward = Math.atan2(y, x) - slant - FULL_TURN / 4;
  const from = polar(first.centre, left, rightward);
  return line(from, touching ? from : polar(second.centre, nextLeft, rightward));
}

function toLeft({ radius, turn }: Post): number {
  return turn === 'in' ? radius : -radius;
}
