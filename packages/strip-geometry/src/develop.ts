import { toDegrees, toRadians } from './angle.js';
import { BendError } from './bend-rules/bend-error.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import type { Part } from './curves/one-way.js';
import { formedStretches, type NumberedSegment, nameOf } from './formed-stretches.js';
import { depthOfInnerFace, depthOfNeutralLine, type MetalSide } from './metal-side.js';
import type { Segment } from './outline.js';
import { type RoundedCorner, roundCorner } from './rounded-corner.js';
import { lengthOf, parameterOf, turnAtJoint } from './segment.js';
import { takenTurns } from './smooth-joints.js';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from './tolerance.js';
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

/** A stretch that is formed round a curve, all of it bending one way. */
export interface CurveRun {
  readonly kind: 'curve';
  readonly from: number;
  readonly to: number;
  /** Tightest radius of the drawn line, see `formedRadius`. */
  readonly radius: number;
  /** Whether the drawn line keeps that radius all along. */
  readonly even: boolean;
  readonly direction: 'in' | 'out';
  /**
   * Degrees formed through, without what the bends at its ends take up, with
   * what it takes over from smooth joints.
   */
  readonly angle: number;
  /** The part of the drawn segment that it is formed to, in millimetres along the segment. */
  readonly shape: { readonly segment: Segment; readonly start: number; readonly end: number };
}

export type Run = FlatRun | BendRun | CurveRun;

export interface DevelopOptions {
  readonly bendRule: BendRule;
  /** Whether the last segment joins the first. */
  readonly closed: boolean;
  readonly metal: MetalSide;
  /**
   * Joints that turn through no more degrees than this are smooth: they get no
   * bend, and their turn is taken over by the segments beside them, see
   * `takenTurns`. Without it only joints that turn through nothing are smooth.
   */
  readonly cornerAngle?: number;
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
 * of its neutral line. A curve is divided where it changes from bending one way
 * to bending the other; a Bezier curve that is straight is a flat.
 *
 * The drawn line of a corner that turns toward the metal's side is the outer
 * face of the bend, and the flats beside it lose (R + T) * tan(A / 2); one that
 * turns away has it on the inner face, and they lose R * tan(A / 2); with the
 * line in the middle of the metal they lose (R + T / 2) * tan(A / 2). Curves
 * follow likewise: from the drawn radius r the inside radius is r - T, r or
 * r - T / 2. Beside a curve the bend is fitted exactly, see `roundCorner`.
 *
 * A curve of length L that turns through A radians is L + d * A long at a
 * distance d outside the drawn line, whatever its shape (parallel curves:
 * Steiner's theorem). The neutral line is taken to lie at one depth all along a
 * curve, the depth that the bend rule gives for its tightest radius.
 *
 * The path must be sound, see `checkOutline`. Segments are counted from 1 at
 * the start of the path in messages.
 *
 * @throws BendError where a corner folds straight back, the bends at the ends
 * of a flat or curve leave nothing of it, a curve is tighter than the metal, or
 * comes to a point.
 */
export function develop(
  path: readonly Segment[],
  { bendRule, closed, metal, cornerAngle = 0 }: DevelopOptions,
): Development {
  const smooth = Math.max(toRadians(cornerAngle), ANGLE_TOLERANCE);
  const following = path.map((_, index) => path[index + 1] ?? (closed ? path[0] : undefined));
  const turns = path.map((segment, index) => {
    const next = following[index];
    return next === undefined ? 0 : turnAtJoint(segment, next);
  });
  const corners = path.map((segment, index): RoundedCorner | undefined => {
    const [next, turn] = [following[index], turns[index] ?? 0];
    return next === undefined || Math.abs(turn) <= smooth
      ? undefined
      : roundCorner(segment, next, bendRule.insideRadius + depthOfInnerFace(turn, metal, bendRule));
  });
  const taken = takenTurns(path, turns, smooth);

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
    const where = { segment, number: index + 1 };
    const left = stretchLeft(where, previous?.after ?? 0, next?.before ?? 0);
    for (const stretch of left === undefined ? [] : formedStretches(where, left, taken[index])) {
      const { turn, radius, even, start, end } = stretch;
      if (turn === 0) {
        runs.push({ kind: 'flat', ...lay(end - start) });
      } else {
        const place = () => `${nameOf(where)}, at ${printPoint(stretch.tightestAt)},`;
        const outside = depthOfNeutralLine(radius, turn, metal, bendRule, place);
        runs.push({
          kind: 'curve',
          ...lay(end - start + outside * Math.abs(turn)),
          radius,
          even,
          ...turnOf(turn),
          shape: { segment, start, end },
        });
      }
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

/** What the bends at its ends leave of a segment, or undefined if nothing. */
function stretchLeft(where: NumberedSegment, atStart: number, atEnd: number): Part | undefined {
  const { segment } = where;
  const length = lengthOf(segment);
  const [start, end] = [atStart, length - atEnd];
  if (end - start < -LENGTH_TOLERANCE) {
    const message =
      `${nameOf(where)}, is ${printLength(length)} long, but the bends at its ends need ` +
      `${printLength(atStart + atEnd)}; make it longer, or bend with a smaller radius.`;
    throw new BendError('no room', message);
  }
  if (end - start <= LENGTH_TOLERANCE) {
    return undefined;
  }
  return {
    from: atStart === 0 ? 0 : parameterOf(segment, start),
    to: atEnd === 0 ? 1 : parameterOf(segment, end),
    start,
    end,
  };
}
