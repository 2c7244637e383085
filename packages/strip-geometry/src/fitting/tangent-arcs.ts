import { FULL_TURN } from '../angle.js';
import type { Arc, Line, Point } from '../outline.js';
import { cross, distance, dot, minus } from '../point.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from '../tolerance.js';
import type { Station } from './smooth-chain.js';

/** Arcs that sweep more, radians, would run back against the trace. */
const MOST_SWEEP = 3;

/**
 * The arc that leaves a place in its heading and ends at a point, or the line
 * where there is no bulge; undefined where it would sweep 3 radians or more.
 */
export function arcTo(from: Station, to: Point): Arc | Line | undefined {
  const heading = { x: Math.cos(from.heading), y: Math.sin(from.heading) };
  const chord = minus(to, from);
  const length = Math.hypot(chord.x, chord.y);
  // The arc turns by twice the angle between its first heading and its chord.
  const half = Math.atan2(cross(heading, chord), dot(heading, chord));
  if (!(length > LENGTH_TOLERANCE) || Math.abs(half) > MOST_SWEEP / 2) {
    return undefined;
  }
  const start = { x: from.x, y: from.y };
  if (Math.abs(half) * length < LENGTH_TOLERANCE / 5) {
    return { kind: 'line', from: start, to };
  }
  const radius = length / (2 * Math.sin(half));
  const centre = { x: from.x - heading.y * radius, y: from.y + heading.x * radius };
  return { kind: 'arc', from: start, to, centre, sweep: 2 * half };
}

/** The same from a point to a place, arriving in its heading. */
export function arcFrom(from: Point, to: Station): Arc | Line | undefined {
  const back = arcTo({ x: to.x, y: to.y, heading: to.heading + Math.PI }, from);
  if (back?.kind === 'arc') {
    return { ...back, from: back.to, to: back.from, sweep: -back.sweep };
  }
  return back && { kind: 'line', from: back.to, to: back.from };
}

/**
 * Two arcs that run smoothly from one place to another, leaving and arriving in
 * its heading. Of all such pairs it is the one whose tangents from either end
 * to the joint are equally long (a biarc; Bolton, "Biarc curves", 1975).
 */
export function twoArcs(from: Station, to: Station): readonly (Arc | Line)[] | undefined {
  const first = { x: Math.cos(from.heading), y: Math.sin(from.heading) };
  const last = { x: Math.cos(to.heading), y: Math.sin(to.heading) };
  const chord = minus(to, from);
  const along = chord.x * (first.x + last.x) + chord.y * (first.y + last.y);
  const spread = 2 * (1 - dot(first, last));
  const square = dot(chord, chord);
  // d solves spread d^2 + 2 along d - square = 0, written so that spread may be 0.
  const root = Math.sqrt(along * along + spread * square);
  const reach = square / (along + root);
  if (!(reach > 0 && Number.isFinite(reach))) {
    return undefined;
  }
  const joint = {
    x: (from.x + to.x + reach * (first.x - last.x)) / 2,
    y: (from.y + to.y + reach * (first.y - last.y)) / 2,
  };
  const [before, after] = [arcTo(from, joint), arcFrom(joint, to)];
  return before && after && [before, after];
}

/** How far a point lies from a line or arc. */
export function distanceToPiece(piece: Arc | Line, p: Point): number {
  const { from, to } = piece;
  if (piece.kind === 'line') {
    const chord = minus(to, from);
    const reach = minus(p, from);
    const [square, ahead] = [dot(chord, chord), dot(reach, chord)];
    if (ahead > 0 && ahead < square) {
      return Math.abs(cross(chord, reach)) / Math.sqrt(square);
    }
  } else if (isBeside(piece, p)) {
    return Math.abs(distance(p, piece.centre) - distance(from, piece.centre));
  }
  return Math.min(distance(p, from), distance(p, to));
}

/** Whether the ray from the centre of an arc through a point meets the arc. */
function isBeside({ from, to, centre, sweep }: Arc, p: Point): boolean {
  const [first, last, out] = [minus(from, centre), minus(to, centre), minus(p, centre)];
  const sense = Math.sign(sweep);
  const [past, short] = [sense * cross(first, out) >= 0, sense * cross(out, last) >= 0];
  // An arc of more than a half turn is all but the rest of the circle.
  return Math.abs(sweep) <= Math.PI ? past && short : past || short || isWhole(sweep);
}

function isWhole(sweep: number): boolean {
  return Math.abs(sweep) >= FULL_TURN - ANGLE_TOLERANCE;
}
