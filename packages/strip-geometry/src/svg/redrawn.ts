import type { Arc, EllipticalArc, Point, Segment } from '../outline.js';
import { cross, distance, dot, minus } from '../point.js';

/** Ends of an arc may move by this share of its chord before it is another arc. */
const MOST_SHIFT = 0.1;

/**
 * The segment with its ends moved a little: a control point moves with the end
 * beside it, an arc is turned and enlarged. Undefined for an arc whose ends
 * lie too near each other for that.
 */
export function redrawn(segment: Segment, from: Point, to: Point): Segment | undefined {
  const shift = minus(from, segment.from);
  const endShift = minus(to, segment.to);
  switch (segment.kind) {
    case 'line':
      return { ...segment, from, to };
    case 'quadratic': {
      const middle = { x: (shift.x + endShift.x) / 2, y: (shift.y + endShift.y) / 2 };
      return { ...segment, from, to, control: plus(segment.control, middle) };
    }
    case 'cubic': {
      const control1 = plus(segment.control1, shift);
      return { ...segment, from, to, control1, control2: plus(segment.control2, endShift) };
    }
    default:
      return redrawnArc(segment, from, to);
  }
}

function redrawnArc(segment: Arc | EllipticalArc, from: Point, to: Point): Segment | undefined {
  const chord = minus(segment.to, segment.from);
  const size = dot(chord, chord);
  const shift = distance(from, segment.from) + distance(to, segment.to);
  if (!(shift <= MOST_SHIFT * Math.sqrt(size))) {
    return undefined;
  }
  // The similar map that takes one chord to the other, as a complex factor.
  const target = minus(to, from);
  const factor = { x: dot(chord, target) / size, y: cross(chord, target) / size };
  const reach = minus(segment.centre, segment.from);
  const centre = plus(from, {
    x: reach.x * factor.x - reach.y * factor.y,
    y: reach.x * factor.y + reach.y * factor.x,
  });
  if (segment.kind === 'arc') {
    return { ...segment, from, to, centre };
  }
  const growth = Math.hypot(factor.x, factor.y);
  return {
    ...segment,
    from,
    to,
    centre,
    radiusX: segment.radiusX * growth,
    radiusY: segment.radiusY * growth,
    rotation: segment.rotation + Math.atan2(factor.y, factor.x),
  };
}

function plus(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}
