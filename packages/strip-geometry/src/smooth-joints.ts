import { isStraight } from './curves/straight.js';
import type { Segment } from './outline.js';
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
 * @param turns through which each segment meets the next one, radians; 0 at the end of an open path
 * @returns for each segment, what it takes over.
 */
export function takenTurns(
  path: readonly Segment[],
  turns: readonly number[],
  smooth: number,
): readonly TakenTurn[] {
  const joints = path.map((segment, index) => {
    const turn = turns[index] ?? 0;
    const isTaken = Math.abs(turn) > ANGLE_TOLERANCE && Math.abs(turn) <= smooth;
    return isTaken ? shared(segment, path[index + 1] ?? path[0] ?? segment, turn) : NOTHING;
  });
  return path.map((_, index) => ({
    atStart: (joints[index - 1] ?? joints[path.length - 1])?.after ?? 0,
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
