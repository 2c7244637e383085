import type { Point } from '../outline.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';

/**
 * What is cut away along one edge of the blank: x along the edge, y the depth
 * cut away there, 0 or more. Ascending in x; two points at one x are a step.
 */
export type EdgeProfile = readonly Point[];

/** A sloping or level part of a profile. */
interface Piece {
  readonly from: Point;
  readonly to: Point;
}

/**
 * What several cuts into one edge take away together: the profile from 0 to
 * `length` that is as deep everywhere as the deepest of them. Parts of cuts
 * beyond the ends are left out.
 */
export function deepestOf(cuts: readonly EdgeProfile[], length: number): EdgeProfile {
  const pieces = cuts.flatMap(piecesOf).sort((a, b) => a.from.x - b.from.x);
  const stops = new Set([0, length]);
  for (const x of [...pieces.flatMap(({ from, to }) => [from.x, to.x]), ...crossings(pieces)]) {
    if (x > 0 && x < length) {
      stops.add(x);
    }
  }
  // Pieces come and go as the edge is followed; only those at hand can be the deepest.
  let [waiting, atHand]: [number, readonly Piece[]] = [0, []];
  const profile = [...stops]
    .sort((a, b) => a - b)
    .flatMap((x): Point[] => {
      const first = waiting;
      while ((pieces[waiting]?.from.x ?? Number.POSITIVE_INFINITY) <= x) {
        waiting++;
      }
      atHand = [...atHand, ...pieces.slice(first, waiting)].filter(({ to }) => to.x >= x);
      return [
        ...(x > 0 ? [{ x, y: depthBeside(atHand, x, 'before') }] : []),
        ...(x < length ? [{ x, y: depthBeside(atHand, x, 'after') }] : []),
      ];
    });
  return simplified(profile);
}

function piecesOf(cut: EdgeProfile): Piece[] {
  return cut.flatMap((from, index) => {
    const to = cut[index + 1];
    return to !== undefined && to.x > from.x ? [{ from, to }] : [];
  });
}

function depthOn({ from, to }: Piece, x: number): number {
  if (x === to.x) {
    return to.y;
  }
  return from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y);
}

/** Depth just before or just after a place: the greatest of the pieces that reach there. */
function depthBeside(pieces: readonly Piece[], x: number, side: 'before' | 'after'): number {
  let deepest = 0;
  for (const piece of pieces) {
    const { from, to } = piece;
    const reaches = side === 'before' ? from.x < x && x <= to.x : from.x <= x && x < to.x;
    if (reaches) {
      deepest = Math.max(deepest, depthOn(piece, x));
    }
  }
  return deepest;
}

/** Where two pieces cross each other. Pieces come in ascending order of their start. */
function crossings(pieces: readonly Piece[]): number[] {
  return pieces.flatMap((a, index) => {
    const found: number[] = [];
    for (let other = index + 1; other < pieces.length; other++) {
      const b = pieces[other];
      if (b === undefined || b.from.x >= a.to.x) {
        break;
      }
      const end = Math.min(a.to.x, b.to.x);
      const [apart, later] = [
        depthOn(a, b.from.x) - depthOn(b, b.from.x),
        depthOn(a, end) - depthOn(b, end),
      ];
      if (apart * later < 0) {
        found.push(b.from.x + (apart / (apart - later)) * (end - b.from.x));
      }
    }
    return found;
  });
}

/** The same profile without points that coincide or lie on the line between their neighbours. */
function simplified(profile: EdgeProfile): EdgeProfile {
  const kept: Point[] = [];
  for (const next of profile) {
    const last = kept.at(-1);
    if (last !== undefined && Math.hypot(next.x - last.x, next.y - last.y) <= LENGTH_TOLERANCE) {
      continue;
    }
    const before = kept.at(-2);
    if (before !== undefined && last !== undefined && isBetween(before, last, next)) {
      kept.pop();
    }
    kept.push(next);
  }
  return kept;
}

function isBetween(a: Point, p: Point, b: Point): boolean {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const off = Math.abs(x * (p.y - a.y) - y * (p.x - a.x)) / Math.hypot(x, y);
  return off <= LENGTH_TOLERANCE && (p.x - a.x) * x + (p.y - a.y) * y > 0;
}

/** The deepest that a profile is at a place, of the two sides of a step; 0 beyond its ends. */
export function depthAt(profile: EdgeProfile, x: number): number {
  let deepest = 0;
  for (let index = firstFrom(profile, x); ; index++) {
    const [before, next] = [profile[index - 1], profile[index]];
    if (next === undefined) {
      return deepest;
    }
    if (next.x === x) {
      deepest = Math.max(deepest, next.y);
      continue;
    }
    const from = before === undefined || before.x === x ? undefined : before;
    return from === undefined ? deepest : Math.max(deepest, depthOn({ from, to: next }, x));
  }
}

/** Index of the first point that lies at `x` or after it. */
function firstFrom(profile: EdgeProfile, x: number): number {
  let [low, high] = [0, profile.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((profile[middle]?.x ?? x) < x) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

/** The stretches along the edge where a profile is at most so deep, longer than the tolerance. */
export function stretchesWithin(
  profile: EdgeProfile,
  depth: number,
): readonly { readonly from: number; readonly to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  for (const [index, a] of profile.entries()) {
    const b = profile[index + 1];
    const part = b && partWithin(a, b, depth + LENGTH_TOLERANCE);
    const last = stretches.at(-1);
    if (part === undefined) {
      continue;
    }
    if (last !== undefined && part.from - last.to <= LENGTH_TOLERANCE) {
      last.to = part.to;
    } else {
      stretches.push({ ...part });
    }
  }
  return stretches.filter(({ from, to }) => to - from > LENGTH_TOLERANCE);
}

function partWithin(a: Point, b: Point, depth: number): { from: number; to: number } | undefined {
  if (a.y <= depth && b.y <= depth) {
    return { from: a.x, to: b.x };
  }
  if (a.y > depth && b.y > depth) {
    return undefined;
  }
  const crossing = a.x + ((depth - a.y) / (b.y - a.y)) * (b.x - a.x);
  return a.y <= depth ? { from: a.x, to: crossing } : { from: crossing, to: b.x };
}
