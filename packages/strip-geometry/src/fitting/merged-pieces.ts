import type { Arc, Line } from '../outline.js';
import { distance, minus, turnFrom } from '../point.js';
import { ANGLE_TOLERANCE } from '../tolerance.js';

/** Centres of one circle agree to this share of its radius. */
const SAME_CENTRE = 1e-7;

/** The closed path with neighbours that lie on one line or circle made one piece. */
export function mergedPieces(pieces: readonly (Arc | Line)[]): readonly (Arc | Line)[] {
  const merged: (Arc | Line)[] = [];
  for (const piece of pieces) {
    const before = merged.at(-1);
    const both = before && asOne(before, piece);
    if (both === undefined) {
      merged.push(piece);
    } else {
      merged[merged.length - 1] = both;
    }
  }
  const [first, last] = [merged[0], merged.at(-1)];
  const closing = first && last && merged.length > 2 ? asOne(last, first) : undefined;
  return closing === undefined ? merged : [closing, ...merged.slice(1, -1)];
}

function asOne(before: Arc | Line, after: Arc | Line): Arc | Line | undefined {
  const ends = { from: before.from, to: after.to };
  if (before.kind === 'line' && after.kind === 'line') {
    const turn = turnFrom(minus(before.to, before.from), minus(after.to, after.from));
    return Math.abs(turn) < ANGLE_TOLERANCE ? { kind: 'line', ...ends } : undefined;
  }
  if (before.kind === 'line' || after.kind === 'line') {
    return undefined;
  }
  const isSame =
    before.sweep * after.sweep > 0 &&
    distance(before.centre, after.centre) < SAME_CENTRE * distance(before.from, before.centre);
  return isSame ? { ...before, ...ends, sweep: before.sweep + after.sweep } : undefined;
}
