import { cross, distance, dot, leftOf, minus } from '../point.js';
import { fittedCircle, fittedLine } from './carrier-fit.js';
import type { RingOfPoints } from './ring-of-points.js';

/** A stretch of points that one line or arc comes near to. */
export interface RoughPiece {
  readonly kind: 'line' | 'arc';
  /** Numbers of its first and last point; the next piece starts with the last. */
  readonly first: number;
  readonly last: number;
  /** Radians a millimetre, positive to the left; 0 for a line. */
  readonly curvature: number;
  /** Direction in which it leaves its first point, radians. */
  readonly heading: number;
}

/** Places where pieces may meet: so many all round, and no more or fewer on one run. */
const PLACES_ALL_ROUND = 600;
const MOST_PLACES = 150;
const FEWEST_PLACES = 24;

/** Points of one piece that are looked at, at most. */
const MOST_LOOKED_AT = 60;

/** An arc counts a little more than a line, so that a line is taken where either would do. */
const COST = { line: 1, arc: 1.01 } as const;

interface Reached {
  readonly cost: number;
  readonly piece: RoughPiece | undefined;
  readonly before: Reached | undefined;
}

/**
 * Divides the points from `first` to `last` into as few lines and arcs as keep
 * each of them within `tolerance` of its own, by dynamic programming over the
 * places where one piece may give way to the next. Two lines never follow each
 * other: that would be a corner, and corners are where runs end.
 */
export function fewestPieces(
  ring: RingOfPoints,
  first: number,
  last: number,
  tolerance: number,
): readonly RoughPiece[] {
  const places = placesOf(ring, first, last);
  const best = places.map(() => new Map<'line' | 'arc' | 'start', Reached>());
  best[0]?.set('start', { cost: 0, piece: undefined, before: undefined });
  places.forEach((from, start) => {
    const reached = [...(best[start] ?? [])];
    const tryEnd = (end: number): boolean => {
      const to = places[end] ?? last;
      const pieces = [linePiece(ring, from, to, tolerance), arcPiece(ring, from, to, tolerance)];
      for (const piece of pieces) {
        for (const [kind, before] of reached) {
          if (piece === undefined || (piece.kind === 'line' && kind === 'line')) {
            continue;
          }
          const cost = before.cost + COST[piece.kind];
          const known = best[end]?.get(piece.kind);
          if (known === undefined || cost < known.cost) {
            best[end]?.set(piece.kind, { cost, piece, before });
          }
        }
      }
      return pieces.some((piece) => piece !== undefined);
    };
    tryEnds(start, places.length - 1, tryEnd);
  });
  const ends = [...(best.at(-1)?.values() ?? [])].sort((a, b) => a.cost - b.cost);
  const pieces: RoughPiece[] = [];
  for (let at = ends[0]; at?.piece !== undefined; at = at.before) {
    pieces.unshift(at.piece);
  }
  return pieces;
}

function placesOf({ size }: RingOfPoints, first: number, last: number): readonly number[] {
  const share = (PLACES_ALL_ROUND * (last - first)) / size;
  const most = Math.min(Math.max(Math.round(share), FEWEST_PLACES), MOST_PLACES);
  const steps = Math.min(last - first, most);
  return Array.from({ length: steps + 1 }, (_, step) =>
    Math.round(first + ((last - first) * step) / steps),
  );
}

/** Ends this near are all tried; farther ones in strides that grow by this share of their way. */
const NEAR = 12;
const STRIDE = 0.15;

/**
 * Tries ends ever farther from the start, in growing strides, until three in a
 * row fail, and then by halving the longest between the last that did and the
 * first that did not: of all pieces that do, the longest matter most.
 */
function tryEnds(start: number, last: number, tryEnd: (end: number) => boolean): void {
  let [misses, reached, missed] = [0, start, start];
  for (let end = start + 1; end <= last && misses < 3; ) {
    if (tryEnd(end)) {
      [misses, reached] = [0, end];
    } else {
      missed = misses === 0 ? end : missed;
      misses += 1;
    }
    const stride = misses > 0 ? 1 : Math.max(Math.floor((end - start - NEAR) * STRIDE), 1);
    end = end === last ? last + 1 : Math.min(end + stride, last);
  }
  const stride = Math.max(Math.floor((reached - start - NEAR) * STRIDE), 1);
  let [least, most] = [reached, missed > reached ? Math.min(reached + stride, missed) : reached];
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (tryEnd(middle)) {
      least = middle;
    } else {
      most = middle;
    }
  }
}

function linePiece(
  ring: RingOfPoints,
  first: number,
  last: number,
  tolerance: number,
): RoughPiece | undefined {
  const { middle, heading } = fittedLine(ring.sums(first, last));
  const normal = leftOf(heading);
  const base = dot(middle, normal);
  const offset = (number: number) => dot(ring.at(number), normal) - base;
  if (!staysWithin(first, last, offset, tolerance)) {
    return undefined;
  }
  const forward = dot(heading, minus(ring.at(last), ring.at(first))) >= 0 ? 0 : Math.PI;
  const angle = Math.atan2(heading.y, heading.x) + forward;
  return { kind: 'line', first, last, curvature: 0, heading: angle };
}

function arcPiece(
  ring: RingOfPoints,
  first: number,
  last: number,
  tolerance: number,
): RoughPiece | undefined {
  const circle = last - first < 3 ? undefined : fittedCircle(ring.sums(first, last));
  if (circle === undefined) {
    return undefined;
  }
  const { centre, radius } = circle;
  const offset = (number: number) => distance(ring.at(number), centre) - radius;
  if (!staysWithin(first, last, offset, tolerance)) {
    return undefined;
  }
  const start = ring.at(first);
  const third = ring.at(Math.round(first + (last - first) / 3));
  const next = ring.at(Math.round(first + (2 * (last - first)) / 3));
  const sense = Math.sign(cross(minus(third, start), minus(next, third)));
  const { x, y } = minus(start, centre);
  const heading = Math.atan2(y, x) + (sense * Math.PI) / 2;
  return { kind: 'arc', first, last, curvature: sense / radius, heading };
}

/**
 * Whether no point is farther off than the tolerance. Of many points only some,
 * evenly spread, are looked at: the finished fit is measured all round anyhow.
 */
function staysWithin(
  first: number,
  last: number,
  offset: (number: number) => number,
  tolerance: number,
): boolean {
  for (const parts of [6, MOST_LOOKED_AT]) {
    const count = Math.min(last - first, parts);
    for (let part = 0; part <= count; part++) {
      const number = Math.round(first + ((last - first) * part) / count);
      if (Math.abs(offset(number)) > tolerance) {
        return false;
      }
    }
  }
  return true;
}
