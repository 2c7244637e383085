import type { Point, Segment } from './outline.js';
import { arc, cubic, ellipticalArc, line, parameterOf, pointAt, quadratic } from './segment.js';

/**
 * The two parts of a segment before and after the place `along` millimetres
 * from its start, which lies inside it. Both are of its own kind. Bezier curves
 * are divided by de Casteljau's rule.
 */
export function splitSegment(segment: Segment, along: number): readonly [Segment, Segment] {
  const share = parameterOf(segment, along);
  const at = pointAt(segment, along);
  const between = (a: Point, b: Point): Point => ({
    x: a.x + share * (b.x - a.x),
    y: a.y + share * (b.y - a.y),
  });
  switch (segment.kind) {
    case 'line':
      return [line(segment.from, at), line(at, segment.to)];
    case 'arc': {
      const { from, to, centre, sweep } = segment;
      const first = { ...arc(from, centre, share * sweep), to: at };
      return [first, { ...arc(at, centre, sweep - first.sweep), to }];
    }
    case 'elliptical arc': {
      const { start, sweep, from, to } = segment;
      const first = { ...ellipticalArc({ ...segment, sweep: share * sweep }), from, to: at };
      const rest = { ...segment, start: start + first.sweep, sweep: sweep - first.sweep };
      return [first, { ...ellipticalArc(rest), from: at, to }];
    }
    case 'quadratic': {
      const { from, control, to } = segment;
      return [quadratic(from, between(from, control), at), quadratic(at, between(control, to), to)];
    }
    case 'cubic': {
      const { from, control1, control2, to } = segment;
      const [a, b, c] = [
        between(from, control1),
        between(control1, control2),
        between(control2, to),
      ];
      return [cubic(from, a, between(a, b), at), cubic(at, between(b, c), c, to)];
    }
  }
}
