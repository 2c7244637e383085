import type { Part, Slice } from './part.js';
import type { Cutting } from './pattern-count.js';

/**
 * The same pattern with the slices of every rectangle in one order, however they
 * came: the widest first, equal ones side by side, and those that hold nothing
 * last, beside the rest. So the gauge of the shear is reset as seldom as can be.
 */
export function inOrder(part: Part): Part {
  return ordered(part).part;
}

/** Two parts are cut alike exactly where their keys are the same. */
export function partKey(part: Part): string {
  return ordered(part).key;
}

/** Two patterns are the same exactly where their keys are. */
export function patternKey({ stockClass, part }: Cutting): string {
  return `${stockClass}:${partKey(part)}`;
}

/** Whether nothing is cut from a part: it is a remnant where it lies. */
export function isEmpty(part: Part): boolean {
  return part.kind === 'split' && part.parts.length === 0;
}

interface Ordered {
  readonly part: Part;
  readonly key: string;
}

/** Parts do not change, and most of a changed pattern is parts it had before. */
const known = new WeakMap<Part, Ordered>();

function ordered(part: Part): Ordered {
  const before = known.get(part);
  if (before !== undefined) return before;
  const result = order(part);
  known.set(part, result);
  known.set(result.part, result);
  return result;
}

function order(part: Part): Ordered {
  if (part.kind === 'lay') return { part, key: `${part.piece}${part.turned ? 't' : ''}` };
  const slices = part.parts.map(({ extent, part }) => ({ extent, ...ordered(part) }));
  slices.sort(
    (a, b) =>
      Number(isEmpty(a.part)) - Number(isEmpty(b.part)) ||
      b.extent - a.extent ||
      (a.key < b.key ? -1 : Number(a.key > b.key)),
  );
  // Equal neighbours are counted, or the keys of patterns with many small pieces grow long.
  const runs: { key: string; copies: number }[] = [];
  for (const { extent, key } of slices) {
    const entry = `${extent}=${key}`;
    const last = runs.at(-1);
    if (last?.key === entry) last.copies++;
    else runs.push({ key: entry, copies: 1 });
  }
  const inner = runs.map(({ key, copies }) => `${copies}*${key}`).join(' ');
  const parts: readonly Slice[] = slices.map(({ extent, part }) => ({ extent, part }));
  // How an empty rectangle would be divided makes no difference.
  const way = slices.length === 0 ? '' : part.cuts === 'along' ? '=' : '|';
  return { part: { ...part, parts }, key: `${way}(${inner})` };
}
