import type { Line, Outcome } from './cutting-list.js';

/**
 * Lines of one setting of the gauge with those put together that a person makes as
 * one: the same metal cut again and again, then one metal after the other cut in the
 * same way. The order of the cuts stays.
 */
export function mergeLines(lines: readonly Line[]): readonly Line[] {
  return merged(merged(lines, again), nextOne);
}

type Merge = (one: Line, other: Line) => Line | undefined;

function merged(lines: readonly Line[], merge: Merge): readonly Line[] {
  const done: Line[] = [];
  for (const line of lines) {
    const last = done.at(-1);
    const both = last === undefined ? undefined : merge(last, line);
    if (both === undefined) done.push(line);
    else done[done.length - 1] = both;
  }
  return done;
}

/** The same metal, turned no way: what is in the hand is cut once more. */
function again(one: Line, other: Line): Line | undefined {
  const [before] = one.takes;
  const [metal] = other.takes;
  const [first] = one.falls;
  const [next] = other.falls;
  if (before?.strip !== metal?.strip || one.edge !== other.edge) return undefined;
  if (first === undefined || next === undefined || !isAlike(first, next)) return undefined;
  if (one.rest.kind !== 'same' || first.kind === 'same') return undefined;
  return {
    ...one,
    cuts: { from: one.cuts.from, to: other.cuts.to },
    times: one.times + other.times,
    falls: [...one.falls, ...other.falls],
    rest: other.rest,
  };
}

/** Another strip with which the same is done, and nothing of either is cut further. */
function nextOne(one: Line, other: Line): Line | undefined {
  const done = [...one.falls, ...other.falls, one.rest, other.rest].every(isDone);
  const [fall] = one.falls;
  const [next] = other.falls;
  if (!done || fall === undefined || next === undefined) return undefined;
  const isSame =
    one.times === other.times &&
    one.edge === other.edge &&
    one.takes.every(({ begun }) => begun === other.takes[0]?.begun) &&
    isAlike(fall, next) &&
    isAlike(one.rest, other.rest);
  if (!isSame) return undefined;
  return {
    ...one,
    cuts: { from: one.cuts.from, to: other.cuts.to },
    takes: [...one.takes, ...other.takes],
  };
}

const isDone = ({ kind }: Outcome): boolean => kind !== 'strip' && kind !== 'same';

/** The same thing; strips are alike whatever their letters. */
function isAlike(one: Outcome, other: Outcome): boolean {
  switch (one.kind) {
    case 'piece':
      return other.kind === 'piece' && one.blank === other.blank;
    case 'offcut':
      return other.kind === 'offcut' && one.length === other.length && one.width === other.width;
    default:
      return one.kind === other.kind;
  }
}
