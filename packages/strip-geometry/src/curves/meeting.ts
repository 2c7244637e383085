import type { Point, Segment } from '../outline.js';
import { cross, distance, dot, minus } from '../point.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { type ParametricCurve, parametric } from './parametric-curve.js';

/** Part of a curve between two parameters. */
export interface CurvePart {
  readonly curve: ParametricCurve;
  readonly from: number;
  readonly to: number;
}

/** A part with what is known of it: its chord, and how far it can stray from that. */
interface Chord extends CurvePart {
  readonly first: Point;
  readonly last: Point;
  readonly bulge: number;
}

/** The whole of a segment. */
export function wholeOf(segment: Segment): CurvePart {
  return { curve: parametric(segment), from: 0, to: 1 };
}

/** Parts that stray this little from their chords are judged by their chords. */
const FLAT = LENGTH_TOLERANCE / 16;

/**
 * A point where two parts of curves come within the length tolerance of each
 * other, ends included, or undefined if they keep apart. The chords tell: parts
 * whose chords are farther apart than both bulges keep apart; of others the
 * one that bulges more is halved, which makes its bulge a quarter.
 */
export function meetingPoint(a: CurvePart, b: CurvePart): Point | undefined {
  return meet(
    chordOf(a, a.curve.at(a.from), a.curve.at(a.to)),
    chordOf(b, b.curve.at(b.from), b.curve.at(b.to)),
  );
}

function chordOf({ curve, from, to }: CurvePart, first: Point, last: Point): Chord {
  return { curve, from, to, first, last, bulge: curve.bulge(from, to) };
}

function meet(a: Chord, b: Chord): Point | undefined {
  const slack = a.bulge + b.bulge + LENGTH_TOLERANCE;
  if (boxesApart(a, b, slack) || chordsApart(a, b) > slack) {
    return undefined;
  }
  if (a.bulge + b.bulge <= FLAT) {
    return nearestPoint(a, b);
  }
  const [parted, other] = a.bulge > b.bulge ? [a, b] : [b, a];
  const { curve, from, to, first, last } = parted;
  const middle = (from + to) / 2;
  const at = curve.at(middle);
  return (
    meet(chordOf({ curve, from, to: middle }, first, at), other) ??
    meet(chordOf({ curve, from: middle, to }, at, last), other)
  );
}

function boxesApart(a: Chord, b: Chord, slack: number): boolean {
  return (
    Math.min(a.first.x, a.last.x) - Math.max(b.first.x, b.last.x) > slack ||
    Math.min(b.first.x, b.last.x) - Math.max(a.first.x, a.last.x) > slack ||
    Math.min(a.first.y, a.last.y) - Math.max(b.first.y, b.last.y) > slack ||
    Math.min(b.first.y, b.last.y) - Math.max(a.first.y, a.last.y) > slack
  );
}

/** Distance between two chords, 0 where they cross. */
function chordsApart(a: Chord, b: Chord): number {
  if (crosses(a, b) && crosses(b, a)) {
    return 0;
  }
  return Math.min(toChord(a.first, b), toChord(a.last, b), toChord(b.first, a), toChord(b.last, a));
}

/** Where two chords cross, or else the end of one that lies nearest to the other. */
function nearestPoint(a: Chord, b: Chord): Point {
  if (crosses(a, b) && crosses(b, a)) {
    const [first, second] = [minus(a.last, a.first), minus(b.last, b.first)];
    const share = cross(minus(b.first, a.first), second) / cross(first, second);
    return { x: a.first.x + share * first.x, y: a.first.y + share * first.y };
  }
  const ends = [
    { end: a.first, apart: toChord(a.first, b) },
    { end: a.last, apart: toChord(a.last, b) },
    { end: b.first, apart: toChord(b.first, a) },
    { end: b.last, apart: toChord(b.last, a) },
  ];
  return ends.reduce((best, other) => (other.apart < best.apart ? other : best)).end;
}

/** Whether the ends of `b` lie on either side of the line through `a`. */
function crosses(a: Chord, b: Chord): boolean {
  const axis = minus(a.last, a.first);
  return cross(axis, minus(b.first, a.first)) * cross(axis, minus(b.last, a.first)) < 0;
}

function toChord(p: Point, { first, last }: Chord): number {
  const axis = minus(last, first);
  const square = dot(axis, axis);
  const along = square === 0 ? 0 : Math.min(Math.max(dot(minus(p, first), axis) / square, 0), 1);
  return distance(p, { x: first.x + axis.x * along, y: first.y + axis.y * along });
}
