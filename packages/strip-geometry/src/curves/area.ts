import type { Segment } from '../outline.js';
import { cross, minus } from '../point.js';
import { radiusOf } from '../segment.js';

/**
 * Area between a segment and its chord in square millimetres, positive where
 * the segment runs to the right of the chord, so that it adds to the area on
 * the left. Half the integral of position cross velocity, seen from the
 * segment's start (Green's theorem), which is a polynomial for Bezier curves
 * and a circular segment, stretched, for an ellipse.
 */
export function areaBesideChord(segment: Segment): number {
  switch (segment.kind) {
    case 'line':
      return 0;
    case 'arc':
      return (radiusOf(segment) ** 2 * besideUnitChord(segment.sweep)) / 2;
    case 'elliptical arc':
      return (segment.radiusX * segment.radiusY * besideUnitChord(segment.sweep)) / 2;
    case 'quadratic': {
      const { from, control, to } = segment;
      return cross(minus(control, from), minus(to, from)) / 3;
    }
    case 'cubic': {
      const first = minus(segment.control1, segment.from);
      const second = minus(segment.control2, segment.from);
      const last = minus(segment.to, segment.from);
      return 0.15 * (cross(first, second) + cross(first, last)) + 0.3 * cross(second, last);
    }
  }
}

/** Twice the area between an arc of the unit circle and its chord. */
function besideUnitChord(sweep: number): number {
  return sweep - Math.sin(sweep);
}
