import type { Point, Segment } from '../outline.js';
import { cross, distance, dot, minus } from '../point.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import type { Piece } from './drawn-path.js';

/** Half axes whose lengths differ by a smaller share than this make a circle. */
const ROUND = 1e-9;

/**
 * The segment that a piece is, in millimetres: a curve whose control points
 * lie on its chord is a line, an ellipse with equal axes is a circle.
 */
export function segmentOfPiece(piece: Piece): Segment {
  const { from, to } = piece;
  switch (piece.kind) {
    case 'line':
      return { kind: 'line', from, to };
    case 'quadratic':
      return isStraight(from, to, [piece.control]) ? { kind: 'line', from, to } : piece;
    case 'cubic':
      return isStraight(from, to, [piece.control1, piece.control2])
        ? { kind: 'line', from, to }
        : piece;
    case 'ellipse':
      return segmentOfEllipse(piece);
  }
}

/** Whether a curve with these control points runs along its chord, and never back. */
function isStraight(from: Point, to: Point, controls: readonly Point[]): boolean {
  const length = distance(from, to);
  const chord = minus(to, from);
  return controls.every((control) => {
    const reach = minus(control, from);
    const share = dot(reach, chord) / (length * length);
    return Math.abs(cross(chord, reach)) / length <= LENGTH_TOLERANCE && share >= 0 && share <= 1;
  });
}

/**
 * The principal axes of an ellipse from two conjugate half-diameters u and v
 * (Rytz's problem, solved by calculation): the point farthest from the centre
 * is at t0 with tan 2 t0 = 2 u.v / (u.u - v.v).
 */
function segmentOfEllipse(piece: Piece & { readonly kind: 'ellipse' }): Segment {
  const { from, to, centre, u, v } = piece;
  const turned = Math.atan2(2 * dot(u, v), dot(u, u) - dot(v, v)) / 2;
  const [cosine, sine] = [Math.cos(turned), Math.sin(turned)];
  const first = { x: u.x * cosine + v.x * sine, y: u.y * cosine + v.y * sine };
  const second = { x: v.x * cosine - u.x * sine, y: v.y * cosine - u.y * sine };
  const sense = Math.sign(cross(first, second));
  const [radiusX, radiusY] = [Math.hypot(first.x, first.y), Math.hypot(second.x, second.y)];
  const sweep = sense * piece.sweep;
  const bulge = radiusX * (1 - Math.cos(Math.min(Math.abs(sweep) / 2, Math.PI)));
  if (radiusY <= LENGTH_TOLERANCE || bulge <= LENGTH_TOLERANCE / 10) {
    return { kind: 'line', from, to };
  }
  if (radiusX - radiusY <= ROUND * radiusX) {
    return { kind: 'arc', from, to, centre, sweep };
  }
  const rotation = Math.atan2(first.y, first.x);
  const start = sense * (piece.start - turned);
  return { kind: 'elliptical arc', from, to, centre, radiusX, radiusY, rotation, start, sweep };
}
