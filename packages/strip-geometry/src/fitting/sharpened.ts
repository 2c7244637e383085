import type { Arc, Line, Outline, Point, Segment } from '../outline.js';
import { asFit, type Trace } from './trace.js';

/** An arc of a smaller radius, in millimetres, may stand for a corner, with so many arcs in all. */
const TIGHT = 3;
const MOST_ARCS = 3;
/** Turns that they may have as a corner, in radians: 20 to 160 degrees. */
const LEAST_TURN = Math.PI / 9;
const MOST_TURN = Math.PI - LEAST_TURN;

/**
 * The fit with corners where it has tight arcs in their place, as far as the trace
 * allows: within the tolerance a small arc or two do for a corner, but a hand bends
 * corners sharper and sooner than it forms such arcs.
 */
export function sharpened(trace: Trace, fitted: Outline): Outline {
  let current = fitted;
  for (let index = 0; index < current.segments.length; index++) {
    for (let arcs = MOST_ARCS; arcs >= 1; arcs--) {
      const segments = withCorner(current.segments, index, arcs, trace.tolerance);
      const sharp = segments && asFit(trace, segments);
      if (sharp === undefined) continue;
      current = sharp;
      break;
    }
  }
  return current;
}

/** The segments with a corner behind the one at `index`, in place of so many arcs, some of them tight. */
function withCorner(
  segments: readonly Segment[],
  index: number,
  count: number,
  tolerance: number,
): readonly (Arc | Line)[] | undefined {
  if (segments.length < count + 3) return undefined;
  const at = (offset: number) => segments[(index + offset) % segments.length];
  const arcs = Array.from({ length: count }, (_, i) => at(i + 1)).filter(isArc);
  const [first, last] = [at(0), at(count + 1)];
  const [line, next] = [asLine(first, tolerance), asLine(last, tolerance)];
  if (line === undefined || next === undefined) return undefined;
  // Between two curves a tight arc is more likely to be one of them.
  if (first?.kind !== 'line' && last?.kind !== 'line') return undefined;
  if (arcs.length < count || !arcs.some(isTight)) return undefined;
  const turn = Math.abs(arcs.reduce((sum, { sweep }) => sum + sweep, 0));
  const corner = meeting(line, next);
  if (corner === undefined || turn < LEAST_TURN || turn > MOST_TURN) return undefined;
  const pieces: (Arc | Line)[] = [];
  for (const segment of segments) {
    if (segment.kind !== 'line' && segment.kind !== 'arc') return undefined;
    if (segment === first) pieces.push({ kind: 'line', from: segment.from, to: corner });
    else if (segment === last) pieces.push({ kind: 'line', from: corner, to: segment.to });
    else if (segment.kind === 'line' || !arcs.includes(segment)) pieces.push(segment);
  }
  return pieces;
}

/**
 * A line, or for an arc that is as good as straight the parallel to its chord that
 * keeps closest to it, two thirds of its rise away (a parabola's mean height).
 */
function asLine(segment: Segment | undefined, tolerance: number): Line | undefined {
  if (segment?.kind === 'line') return segment;
  if (segment?.kind !== 'arc' || isTight(segment) || Math.abs(segment.sweep) > LEAST_TURN) {
    return undefined;
  }
  const rise = radiusOf(segment) * (1 - Math.cos(segment.sweep / 2));
  if (rise > 2 * tolerance) return undefined;
  const { from, to, sweep } = segment;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  // An arc that turns to the left bulges to the right of its chord.
  const away = (Math.sign(sweep) * rise * 2) / 3 / chord;
  const by = { x: (to.y - from.y) * away, y: (from.x - to.x) * away };
  return {
    kind: 'line',
    from: { x: from.x + by.x, y: from.y + by.y },
    to: { x: to.x + by.x, y: to.y + by.y },
  };
}

function isArc(segment: Segment | undefined): segment is Arc {
  return segment?.kind === 'arc';
}

function isTight(arc: Arc): boolean {
  return radiusOf(arc) <= TIGHT;
}

function radiusOf({ from, centre }: Arc): number {
  return Math.hypot(from.x - centre.x, from.y - centre.y);
}

/** Where two lines meet when they are drawn on; undefined where they are parallel. */
function meeting(one: Line, other: Line): Point | undefined {
  const [ax, ay] = [one.to.x - one.from.x, one.to.y - one.from.y];
  const [bx, by] = [other.to.x - other.from.x, other.to.y - other.from.y];
  const cross = ax * by - ay * bx;
  if (cross === 0) return undefined;
  const along = ((other.from.x - one.from.x) * by - (other.from.y - one.from.y) * bx) / cross;
  return { x: one.from.x + along * ax, y: one.from.y + along * ay };
}
