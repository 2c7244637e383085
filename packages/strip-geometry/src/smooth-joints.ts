import { isStraight } from './curves/straight.js';
import type { Segment } from './outline.js';
import { turnAtJoint } from './segment.js';
import { ANGLE_TOLERANCE } from './tolerance.js';

/** Radians, positive to the left, that a segment turns beyond its own turn. */
export interface TakenTurn {
  readonly atStart: number;
  readonly atEnd: number;
}

/**
 * Joints that turn through no more than `smooth` radians are no corners: their
 * turn is taken over by the segments beside them, so that the path as a whole
 * turns as far as it did. A curve beside a straight line takes all of it, since
 * it is formed anyway; of two curves, or two straight lines, each takes half.
 * Below the angle tolerance there is nothing to take.
 *
 * @returns for each segment, what it takes over.
 */
export function takenTurns(
  path: readonly Segment[],
  closed: boolean,
  smooth: number,
): readonly TakenTurn[] {
  const joints = path.map((segment, index) => {
    const next = path[index + 1] ?? (closed ? path[0] : undefined);
    const turn = next === undefined ? 0 : turnAtJoint(segment, next);
    const isTaken = Math.abs(turn) > ANGLE_TOLERANCE && Math.abs(turn) <= smooth;
    return next === undefined || !isTaken ? NOTHING : shared(segment, next, turn);
  });
  return path.map((_, index) => ({
    atStart: (joints[index - 1] ?? (closed ? joints[path.length - 1] : undefined))?.after ?? 0,
    atEnd: joints[index]?.before ?? 0,
  }));
}

const NOTHING = { before: 0, after: 0 };

function shared(before: Segment, after: Segment, turn: number): { before: number; after: number } {
  const [first, second] = [isStraight(before), isStraight(after)];
  if (first === second) {
    return { before: turn / 2, after: turn / 2 };
  }
  return first ? { before: 0, after: turn } : { before: turn, after: 0 };
}
