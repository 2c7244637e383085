import { toDegrees } from './angle.js';
import { BendError } from './bend-rules/bend-error.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import type { Segment } from './outline.js';
import { type RoundedCorner, roundCorner } from './rounded-corner.js';
import { lengthOf, radiusOf, totalTurn, turnAtJoint } from './segment.js';
import { LENGTH_TOLERANCE } from './tolerance.js';
import { printLength, printPoint } from './wording.js';

/** A stretch that stays straight. Distances along the flat strip, millimetres. */
export interface FlatRun {
  readonly kind: 'flat';
  readonly from: number;
  readonly to: number;
}

/** A sharp corner, bent with the inside radius of the bend rule. */
export interface BendRun {
  readonly kind: 'bend';
  readonly from: number;
  readonly to: number;
  /** `in` bends to the left of the path's travel, the inside of an outline. */
  readonly direction: 'in' | 'out';
  /** Degrees bent through. */
  readonly angle: number;
}

/** A stretch that is formed round a curve. */
export interface CurveRun {
  readonly kind: 'curve';
  readonly from: number;
  readonly to: number;
  /** Tightest radius of the drawn line. */
  readonly radius: number;
  /** Whether the drawn line keeps that radius all along. */
  readonly even: boolean;
  readonly direction: 'in' | 'out';
  /** Degrees formed through, without what the bends at its ends take up. */
  readonly angle: number;
  /** The part of the drawn segment that it is formed to, in millimetres along the segment. */
  readonly shape: { readonly segment: Segment; readonly start: number; readonly end: number };
}

export type Run = FlatRun | BendRun | CurveRun;

export interface DevelopOptions {
  readonly bendRule: BendRule;
  /** Whether the last segment joins the first. */
  readonly closed: boolean;
  /**
   * Which side of the drawn line the metal lies on. `outside`: to the right of
   * the travel, so that the line is the inside face of a cutter. `inside`: to
   * the left, so that the line of an anticlockwise outline is its outer mould line.
   */
  readonly metal: 'outside' | 'inside';
}

/** A path laid out flat. Millimetres. */
export interface Development {
  readonly length: number;
  /** End to end from 0 to `length`. A closed path ends with the bend at its start, if there is one. */
  readonly runs: readonly Run[];
}

/**
 * Lays a path of bent metal out flat: flats keep their length between the
 * bends, each sharp corner takes up its bend allowance, each curve the length
 * of its neutral line.
 *
 * A corner that turns toward the metal's side has the drawn line on the outer
 * face of the bend, and the flats beside it lose (R + T) * tan(A / 2); one that
 * turns away has it on the inner face, and they lose R * tan(A / 2). Curves
 * follow likewise: a drawn radius r is the inside radius of a curve that turns
 * away from the metal, and r - T is that of one that turns toward it. Beside a
 * curve the bend is fitted exactly, see `roundCorner`.
 *
 * The path must be sound, see `checkOutline`. Segments are counted from 1 at
 * the start of the path in messages.
 *
 * @throws BendError where a corner folds straight back, the bends at the ends
 * of a flat or curve leave nothing of it, or a curve is tighter than the metal.
 */
export function develop(
  path: readonly Segment[],
  { bendRule, closed, metal }: DevelopOptions,
): Development {
  const turnsToMetal = (turn: number) => turn > 0 === (metal === 'inside');
  const corners = path.map((segment, index): RoundedCorner | undefined => {
    const next = path[index + 1] ?? (closed ? path[0] : undefined);
    return next && roundCornerFor(segment, next, bendRule, turnsToMetal);
  });

  const runs: Run[] = [];
  let at = 0;
  const lay = (length: number) => {
    const from = at;
    at += length;
    return { from, to: at };
  };
  path.forEach((segment, index) => {
    const previous = index === 0 ? corners[path.length - 1] : corners[index - 1];
    const next = corners[index];
    const left = lengthLeft(segment, index + 1, previous?.after ?? 0, next?.before ?? 0);
    if (left > 0 && segment.kind === 'line') {
      runs.push({ kind: 'flat', ...lay(left) });
    } else if (left > 0) {
      const turn = totalTurn(segment);
      const even = segment.kind === 'arc';
      const radius = even ? radiusOf(segment) : lengthOf(segment) / Math.abs(turn);
      const neutral = neutralRadius(segment, radius, turn, index + 1, bendRule, turnsToMetal);
      const start = previous?.after ?? 0;
      runs.push({
        kind: 'curve',
        ...lay((left / radius) * neutral),
        radius,
        even,
        ...turnOf((left / radius) * Math.sign(turn)),
        shape: { segment, start, end: start + left },
      });
    }
    if (next !== undefined) {
      const turn = turnOf(next.turn);
      runs.push({ kind: 'bend', ...lay(bendRule.allowance(turn.angle)), ...turn });
    }
  });
  return { length: at, runs };
}

function turnOf(turn: number): { direction: 'in' | 'out'; angle: number } {
  return { direction: turn > 0 ? 'in' : 'out', angle: toDegrees(Math.abs(turn)) };
}

function roundCornerFor(
  before: Segment,
  after: Segment,
  rule: BendRule,
  turnsToMetal: (turn: number) => boolean,
): RoundedCorner | undefined {
  const turn = turnAtJoint(before, after);
  return roundCorner(before, after, rule.insideRadius + (turnsToMetal(turn) ? rule.thickness : 0));
}

/** What the bends at its ends leave of a segment, along the drawn line. */
function lengthLeft(segment: Segment, number: number, atStart: number, atEnd: number): number {
  const length = lengthOf(segment);
  const left = length - atStart - atEnd;
  if (left < -LENGTH_TOLERANCE) {
    const kind = segment.kind === 'line' ? 'flat' : 'curve';
    const message =
      `Segment ${number}, the ${kind} from ${printPoint(segment.from)} to ` +
      `${printPoint(segment.to)}, is ${printLength(length)} long, but the bends at its ends need ` +
      `${printLength(atStart + atEnd)}; make it longer, or bend with a smaller radius.`;
    throw new BendError('no room', message);
  }
  return left > LENGTH_TOLERANCE ? left : 0;
}

function neutralRadius(
  segment: Segment,
  radius: number,
  turn: number,
  number: number,
  rule: BendRule,
  turnsToMetal: (turn: number) => boolean,
): number {
  const inside = turnsToMetal(turn) ? radius - rule.thickness : radius;
  if (inside < 0) {
    const message =
      `Segment ${number}, the curve from ${printPoint(segment.from)} to ` +
      `${printPoint(segment.to)}, has a radius of ${printLength(radius)} on the outer face of ` +
      `metal ${printLength(rule.thickness)} thick; it needs at least that radius.`;
    throw new BendError('too tight', message);
  }
  return inside + rule.neutralDepth(inside);
}
