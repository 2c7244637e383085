import { across, laySize } from '../pattern/cut-up.js';
import type { CuttingRules } from '../pattern/cutting-rules.js';
import type { Part, Slice, SplitPart } from '../pattern/part.js';
import { partKey } from '../pattern/pattern-key.js';
import type { Rolling } from '../problem.js';
import type { Appraiser } from './appraise.js';

/** Slices from the root of a pattern inwards, each by its place in the one before. */
export type Path = readonly number[];

/** What is left of a part when copies of a piece are gone. */
export interface Remainder {
  readonly left: Part;
  /** Where they were. */
  readonly path: Path;
  /** How many are gone. */
  readonly copies: number;
}

const EMPTY: Part = { kind: 'split', cuts: 'along', parts: [] };

const known = new WeakMap<Part, ReadonlyMap<number, number>>();

/** Copies of each piece in a part. */
export function countsOf(part: Part): ReadonlyMap<number, number> {
  const before = known.get(part);
  if (before !== undefined) return before;
  const counts = new Map<number, number>();
  if (part.kind === 'lay') counts.set(part.piece, 1);
  else {
    for (const slice of part.parts) {
      for (const [piece, copies] of countsOf(slice.part)) {
        counts.set(piece, (counts.get(piece) ?? 0) + copies);
      }
    }
  }
  known.set(part, counts);
  return counts;
}

/**
 * Every different way of taking copies of a piece out of one place of a part:
 * as many as lie there side by side, but no more than `most`.
 */
export function without(part: Part, piece: number, most: number): readonly Remainder[] {
  if (part.kind === 'lay') {
    return part.piece === piece ? [{ left: EMPTY, path: [], copies: 1 }] : [];
  }
  const found: Remainder[] = [];
  const seen = new Set<string>();
  part.parts.forEach((slice, at) => {
    if (!countsOf(slice.part).has(piece)) return;
    const key = keyOf(slice);
    if (seen.has(key)) return;
    seen.add(key);
    if (slice.part.kind === 'lay') {
      let copies = 0;
      const parts = part.parts.filter((other) => {
        const goes = copies < most && keyOf(other) === key;
        if (goes) copies++;
        return !goes;
      });
      found.push({ left: { ...part, parts }, path: [], copies });
      return;
    }
    for (const { left, path, copies } of without(slice.part, piece, most)) {
      const inner = { ...slice, part: left };
      found.push(
        countsOf(left).size === 0
          ? { left: withoutSlice(part, at), path: [], copies }
          : { left: withSlice(part, at, inner), path: [at, ...path], copies },
      );
    }
  });
  return found;
}

/** The part at the end of a path. */
export function partAt(part: Part, [at, ...further]: Path): Part {
  return at === undefined || part.kind === 'lay' ? part : partAt(part.parts[at].part, further);
}

/** A pattern with another part at the end of a path. */
export function withPart(part: Part, [at, ...further]: Path, other: Part): Part {
  if (at === undefined || part.kind === 'lay') return other;
  const slice = part.parts[at];
  return withSlice(part, at, { ...slice, part: withPart(slice.part, further, other) });
}

/** A split with a slice gone and those behind it moved up. */
function withoutSlice(part: SplitPart, at: number): Part {
  return { ...part, parts: part.parts.filter((_, i) => i !== at) };
}

/** Narrows the slices on a path, the innermost first, where that does no harm. */
export function narrowed(part: Part, path: Path, appraiser: Appraiser): Part {
  let best = part;
  for (let depth = path.length; depth > 0; depth--) {
    const narrower = narrowedAt(best, path.slice(0, depth), appraiser.rules);
    if (narrower === undefined) continue;
    const { legal, kept } = appraiser.appraise(narrower);
    if (legal && kept >= appraiser.appraise(best).kept) best = narrower;
  }
  return best;
}

function narrowedAt(part: Part, [at, ...further]: Path, rules: CuttingRules): Part | undefined {
  if (part.kind === 'lay') return undefined;
  const slice = part.parts[at];
  if (further.length > 0) {
    const inner = narrowedAt(slice.part, further, rules);
    return inner && withSlice(part, at, { ...slice, part: inner });
  }
  const extent = needed(slice.part, part.cuts, rules);
  return extent < slice.extent ? withSlice(part, at, { ...slice, extent }) : undefined;
}

/** Gross extent, square to cuts that run so, that what is in a part takes up. */
function needed(part: Part, runs: Rolling, rules: CuttingRules): number {
  if (part.kind === 'lay') return across(laySize(part, rules), runs);
  return part.cuts === runs
    ? part.parts.reduce((sum, { extent }) => sum + extent, 0)
    : part.parts.reduce((most, slice) => Math.max(most, needed(slice.part, runs, rules)), 0);
}

function withSlice(part: SplitPart, at: number, slice: Slice): Part {
  return { ...part, parts: part.parts.map((before, i) => (i === at ? slice : before)) };
}

function keyOf({ extent, part }: Slice): string {
  return `${extent}=${partKey(part)}`;
}
