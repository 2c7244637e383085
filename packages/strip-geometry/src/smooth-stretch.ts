import { turnBetween } from './curves/turning.js';
import type { Segment } from './outline.js';
import { lengthOf, parameterOf, reversedPath, turnAtJoint } from './segment.js';
import { LENGTH_TOLERANCE } from './tolerance.js';

/** How far a path can be followed without a corner, and how much it turns on the way. */
export interface Stretch {
  /** Millimetres followed: as much as was asked for, or less where a corner comes first. */
  readonly reached: number;
  /** Radians turned through, whichever way. */
  readonly turn: number;
}

/** A closed path with what following it again and again needs to know of its segments. */
export interface MeasuredPath {
  readonly path: readonly Segment[];
  readonly lengths: readonly number[];
  /** Radians turned through at the start of each segment, whichever way. */
  readonly joints: readonly number[];
}

/** Measures a closed path. */
export function measuredPath(path: readonly Segment[]): MeasuredPath {
  const joints = path.map((segment, index) => {
    const before = path[(index + path.length - 1) % path.length];
    return before === undefined ? 0 : Math.abs(turnAtJoint(before, segment));
  });
  return { path, lengths: path.map(lengthOf), joints };
}

/** Indices of the segments that begin at a corner, which turns by more than `smooth` radians. */
export function corners({ joints }: MeasuredPath, smooth: number): readonly number[] {
  return joints.flatMap((joint, index) => (joint > smooth ? [index] : []));
}

/**
 * Follows a closed path from the start of its segment `start` for `length`
 * millimetres, to the first corner, or once round.
 */
export function stretchAfter(
  { path, lengths, joints }: MeasuredPath,
  start: number,
  length: number,
  smooth: number,
): Stretch {
  let [reached, turn] = [0, 0];
  for (let step = 0; step < path.length; step++) {
    const index = (start + step) % path.length;
    const [segment, joint] = [path[index], step === 0 ? 0 : (joints[index] ?? 0)];
    if (segment === undefined || joint > smooth || reached >= length - LENGTH_TOLERANCE) {
      break;
    }
    const here = Math.min(lengths[index] ?? 0, length - reached);
    turn += joint + turnWithin(segment, 0, here);
    reached += here;
  }
  return { reached, turn };
}

/**
 * What `stretchAfter` tells for the start of every segment, in one pass. The
 * turn on the part of the last segment is taken in proportion to its length.
 */
export function stretchesAfterAll(
  measured: MeasuredPath,
  length: number,
  smooth: number,
): readonly Stretch[] {
  const { path, lengths, joints } = measured;
  const count = path.length;
  const wholeTurns = path.map((segment, index) => turnWithin(segment, 0, lengths[index] ?? 0));
  const lengthOfSide = (index: number) => lengths[index % count] ?? 0;
  const turnOfSide = (index: number) => wholeTurns[index % count] ?? 0;
  const jointBefore = (index: number) => joints[index % count] ?? 0;

  // Length and turn of the sides from `start` up to but not including `end`, joints between them too.
  let [end, whole, turned] = [0, 0, 0];
  return path.map((_, start): Stretch => {
    if (end === start) {
      [end, whole, turned] = [start + 1, lengthOfSide(start), turnOfSide(start)];
    }
    while (whole < length && end < start + count && jointBefore(end) <= smooth) {
      whole += lengthOfSide(end);
      turned += jointBefore(end) + turnOfSide(end);
      end++;
    }
    const over = Math.max(whole - length, 0);
    const last = end - 1;
    const stretch = {
      reached: whole - over,
      turn: Math.max(turned - (over / lengthOfSide(last)) * turnOfSide(last), 0),
    };
    whole -= lengthOfSide(start);
    turned -= turnOfSide(start) + (end > start + 1 ? jointBefore(start + 1) : 0);
    return stretch;
  });
}

/** Follows a closed path back from its start, which may itself be a corner. */
export function stretchBefore(measured: MeasuredPath, length: number, smooth: number): Stretch {
  return (measured.joints[0] ?? 0) > smooth
    ? { reached: 0, turn: 0 }
    : stretchAfter(measuredPath(reversedPath(measured.path)), 0, length, smooth);
}

/** Pieces that a segment's turn is summed over, so that an S does not count as straight. */
const PIECES = 8;
/** A segment shorter than this is taken whole: its ends tell how it turns, millimetres. */
const SHORT = 1;

/** Radians that a segment turns through between two distances along it, whichever way. */
export function turnWithin(segment: Segment, from: number, to: number): number {
  if (segment.kind === 'line') {
    return 0;
  }
  const [start, end] = [parameterOf(segment, from), parameterOf(segment, to)];
  const pieces = segment.kind === 'arc' || to - from < SHORT ? 1 : PIECES;
  const stop = (piece: number) => start + ((end - start) * piece) / pieces;
  return Array.from({ length: pieces }, (_, piece) =>
    Math.abs(turnBetween(segment, stop(piece), stop(piece + 1))),
  ).reduce((sum, turn) => sum + turn, 0);
}
