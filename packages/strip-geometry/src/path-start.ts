import type { Segment } from './outline.js';
import { lengthOf } from './segment.js';
import { splitSegment } from './split-segment.js';

/** A start nearer to a joint than this is at the joint: far less than a rule shows, millimetres. */
const SNAP = 0.01;

/** A closed path started at its segment of that index. */
export function startedAtSegment(path: readonly Segment[], index: number): readonly Segment[] {
  return index === 0 ? path : [...path.slice(index), ...path.slice(0, index)];
}

/** A closed path started `into` millimetres along its segment of that index, which is split there. */
export function startedInSegment(
  path: readonly Segment[],
  index: number,
  into: number,
): readonly Segment[] {
  const segment = path[index];
  if (segment === undefined || into <= SNAP) {
    return startedAtSegment(path, index);
  }
  if (into >= lengthOf(segment) - SNAP) {
    return startedAtSegment(path, (index + 1) % path.length);
  }
  const [before, after] = splitSegment(segment, into);
  return [after, ...path.slice(index + 1), ...path.slice(0, index), before];
}
