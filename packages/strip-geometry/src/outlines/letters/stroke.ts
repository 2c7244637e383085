import { toRadians } from '../../angle.js';
import type { Arc, Line, Point, Segment } from '../../outline.js';
import { along, distance, leftOf, minus, point, turnFrom } from '../../point.js';
import { arcBetween, headingAtEnd, headingAtStart, line, reversedPath } from '../../segment.js';
import { closedPolygon } from '../closed-polygon.js';

/** Width of every stroke of every letter, as a part of the letter's height. */
export const STROKE = 0.2;

/** The outline of a letter 1 high, its foot on the x axis, its left edge on the y axis. */
export type LetterOutline = readonly Segment[];

/**
 * Width of the flat that ends the gap between two strokes where they meet in a
 * sharp corner, and the turn from which on a corner is one: a finger of dough
 * sticks in it, and no notch of 60 degrees to each side clears the hem.
 */
const CROTCH = STROKE / 2;
const SHARPEST = toRadians(120);

/** How the flat in a crotch lies. */
type Flat = 'level' | 'upright';

/** A letter of straight sides, by its corners, each sharp crotch opened by a flat. */
export function straight(
  corners: readonly (readonly [x: number, y: number])[],
  flat: Flat = 'level',
): LetterOutline {
  const points = corners.map(([x, y]) => point(x, y));
  const opened = points.flatMap((corner, index) => {
    const before = points.at(index - 1) ?? corner;
    const after = points[(index + 1) % points.length] ?? corner;
    const turn = turnFrom(minus(corner, before), minus(after, corner));
    return turn < -SHARPEST ? openCrotch(before, corner, after, flat) : [corner];
  });
  return closedPolygon(opened);
}

/** The ends of the flat that opens a crotch: where the sides to `before` and `after` are so far apart. */
export function openCrotch(
  before: Point,
  corner: Point,
  after: Point,
  flat: Flat,
): readonly [Point, Point] {
  const [a, b] = [minus(before, corner), minus(after, corner)];
  const [slopeA, slopeB] = flat === 'level' ? [a.x / a.y, b.x / b.y] : [a.y / a.x, b.y / b.x];
  const away = (CROTCH / Math.abs(slopeA - slopeB)) * Math.sign(flat === 'level' ? a.y : a.x);
  const on = (slope: number) =>
    flat === 'level'
      ? point(corner.x + slope * away, corner.y + away)
      : point(corner.x + away, corner.y + slope * away);
  return [on(slopeA), on(slopeB)];
}

/** The outline of a stroke along a smooth path of lines and arcs, its ends cut square. */
export function strokeAlong(path: readonly (Line | Arc)[]): LetterOutline {
  const right = path.map((part) => shifted(part, -STROKE / 2));
  const left = reversedPath(path.map((part) => shifted(part, STROKE / 2)));
  return [...right, ...cut(right, left), ...left, ...cut(left, right)];
}

function shifted(part: Line | Arc, toLeft: number): Line | Arc {
  const from = along(part.from, leftOf(headingAtStart(part)), toLeft);
  const to = along(part.to, leftOf(headingAtEnd(part)), toLeft);
  return part.kind === 'line' ? line(from, to) : { ...part, from, to };
}

function cut(before: readonly Segment[], after: readonly Segment[]): Line[] {
  const [last, first] = [before.at(-1), after[0]];
  return last === undefined || first === undefined ? [] : [line(last.to, first.from)];
}

/**
 * Length of the level ends of a slanting stroke that just fits a box with its
 * ends on the bottom and the top: d with d h / sqrt(h^2 + (w - d)^2) = stroke.
 * The box must be higher than the stroke is wide.
 */
export function levelEnd(width: number, height: number): number {
  const [w2, h2, s2] = [width ** 2, height ** 2, STROKE ** 2];
  const root = Math.sqrt(w2 * h2 - (h2 - s2) * (w2 - s2));
  return width - (width * h2 - height * root) / (h2 - s2);
}

/** Length of the level end of a slanting stroke that goes `run` sideways in a height of `rise`. */
export function levelEndAt(run: number, rise: number): number {
  return (STROKE * distance(point(run, rise), point(0, 0))) / rise;
}

/** A half circle from one end of its diameter to the other, anticlockwise. */
export function halfCircle(x: number, from: number, to: number): Arc {
  const [start, end] = [point(x, from), point(x, to)];
  return arcBetween(start, end, point(x, (from + to) / 2), 'anticlockwise');
}
