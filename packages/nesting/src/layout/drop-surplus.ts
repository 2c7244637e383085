import { across, cutUp, laySize } from '../pattern/cut-up.js';
import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import { keptValue } from '../pattern/kept-value.js';
import { legal } from '../pattern/legal.js';
import type { Part, Pattern, Slice, SplitPart } from '../pattern/part.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import { inOrder, isEmpty, partKey, patternKey } from '../pattern/pattern-key.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { Rolling } from '../problem.js';

/**
 * Takes out what is cut beyond demand, so that every piece comes out exactly as
 * often as it is wanted. What is taken leaves room beside it: later slices move
 * up, and slices that hold it are narrowed to the widest piece left in them
 * where the machine allows that and the remnants are worth no less. Sheets that
 * are cut alike are changed alike, as far as the surplus goes.
 * @param sheets patterns that give at least the demand
 * @param demand copies wanted of each piece
 * @param boxes one for each stock class
 * @returns legal patterns, none twice, none empty, worth no less together
 * @throws Error where a piece comes short
 */
export function dropSurplus(
  sheets: readonly PatternCount[],
  demand: readonly number[],
  boxes: readonly CutBox[],
  rules: CuttingRules,
): readonly PatternCount[] {
  const surplus = surplusOf(sheets, demand);
  const groups = withoutWholeSheets(sheets, surplus);
  const largestFirst = [...surplus.keys()].sort((a, b) => area(b, rules) - area(a, rules));
  for (const piece of largestFirst) {
    while (surplus[piece] > 0) {
      const change = bestChange(groups, piece, surplus[piece], boxes, rules);
      const { group, pattern, count } = change;
      surplus[piece] -= count;
      group.count -= count;
      const changed = { pattern, count };
      const at = groups.indexOf(group);
      groups.splice(at, group.count === 0 ? 1 : 0, ...(pattern.counts.length > 0 ? [changed] : []));
    }
  }
  return merged(groups);
}

/** The same list with equal patterns counted together, in the order they first come. */
export function merged(sheets: readonly PatternCount[]): readonly PatternCount[] {
  const byKey = new Map<string, PatternCount>();
  for (const { pattern, count } of sheets) {
    const key = patternKey(pattern);
    const before = byKey.get(key);
    byKey.set(key, { pattern: before?.pattern ?? pattern, count: count + (before?.count ?? 0) });
  }
  return [...byKey.values()];
}

interface Group {
  readonly pattern: Pattern;
  count: number;
}

function surplusOf(sheets: readonly PatternCount[], demand: readonly number[]): number[] {
  const surplus = demand.map((copies) => -copies);
  for (const { pattern, count } of sheets) {
    for (const [piece, copies] of pattern.counts) surplus[piece] += copies * count;
  }
  const short = surplus.findIndex((copies) => copies < 0);
  if (short >= 0) throw new Error(`piece ${short} comes ${-surplus[short]} short of its demand`);
  return surplus;
}

/** Copies of sheets on which everything is surplus go first; `surplus` is brought up to date. */
function withoutWholeSheets(sheets: readonly PatternCount[], surplus: number[]): Group[] {
  return sheets.flatMap(({ pattern, count }) => {
    const idle = pattern.counts.map(([piece, copies]) => Math.floor(surplus[piece] / copies));
    const gone = Math.min(count, ...idle);
    for (const [piece, copies] of pattern.counts) surplus[piece] -= copies * gone;
    return gone < count ? [{ pattern, count: count - gone }] : [];
  });
}

interface Change {
  readonly group: Group;
  readonly pattern: Pattern;
  readonly count: number;
  /** What it is chosen by: the first number that differs decides, the greater is better. */
  readonly merit: readonly number[];
}

function bestChange(
  groups: readonly Group[],
  piece: number,
  surplus: number,
  boxes: readonly CutBox[],
  rules: CuttingRules,
): Change {
  let best: Change | undefined;
  for (const group of groups) {
    const { stockClass, part, counts, kept } = group.pattern;
    if (!counts.some(([other]) => other === piece)) continue;
    const box = boxes[stockClass];
    const count = Math.min(group.count, surplus);
    for (const { left, path } of without(inOrder(part), piece)) {
      const narrow = narrowed(left, path, box, rules);
      const pattern = patternOf(narrow, stockClass, box, rules);
      const alike = Number(group.count <= surplus);
      const merit = [pattern.kept - kept, alike, largestRemnant(narrow, box, rules)];
      if (best === undefined || exceeds(merit, best.merit)) {
        best = { group, pattern, count, merit };
      }
    }
  }
  if (best === undefined) throw new Error(`piece ${piece} is in no pattern`);
  return best;
}

function exceeds(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && a[at] > b[at];
}

/** What is left of a part when a copy of a piece is gone, and where, as slices from the root. */
interface Remainder {
  readonly left: Part;
  readonly path: readonly number[];
}

/** Every different way of taking one copy of a piece out of a part that is in order. */
function without(part: Part, piece: number): readonly Remainder[] {
  if (part.kind === 'lay') {
    return part.piece === piece
      ? [{ left: { kind: 'split', cuts: 'along', parts: [] }, path: [] }]
      : [];
  }
  const found: Remainder[] = [];
  let before = '';
  part.parts.forEach((slice, at) => {
    const key = `${slice.extent}=${partKey(slice.part)}`;
    if (key === before) return;
    before = key;
    for (const { left, path } of without(slice.part, piece)) {
      const vanishes = isEmpty(left) || !holdsAny(left);
      const parts = vanishes
        ? part.parts.filter((_, i) => i !== at)
        : replaced(part.parts, at, { ...slice, part: left });
      found.push({ left: { ...part, parts }, path: vanishes ? [] : [at, ...path] });
    }
  });
  return found;
}

function holdsAny(part: Part): boolean {
  return part.kind === 'lay' || part.parts.some((slice) => holdsAny(slice.part));
}

/** Narrows the slices on the path, the innermost first, where that does no harm. */
function narrowed(part: Part, path: readonly number[], box: CutBox, rules: CuttingRules): Part {
  let best = part;
  let kept = keptOf(best, box, rules);
  for (let depth = path.length; depth > 0; depth--) {
    const narrower = narrowedAt(best, path.slice(0, depth), rules);
    if (narrower === undefined || !legal(narrower, box, rules)) continue;
    const then = keptOf(narrower, box, rules);
    if (then < kept) continue;
    best = narrower;
    kept = then;
  }
  return best;
}

function narrowedAt(part: Part, path: readonly number[], rules: CuttingRules): Part | undefined {
  if (part.kind === 'lay') return undefined;
  const [at, ...further] = path;
  const slice = part.parts[at];
  if (further.length > 0) {
    const inner = narrowedAt(slice.part, further, rules);
    return inner && withSlice(part, at, { ...slice, part: inner });
  }
  const extent = needed(slice.part, part.cuts, rules);
  return extent < slice.extent ? withSlice(part, at, { ...slice, extent }) : undefined;
}

function withSlice(part: SplitPart, at: number, slice: Slice): Part {
  return { ...part, parts: replaced(part.parts, at, slice) };
}

/** Gross extent, square to cuts that run so, that what is in a part takes up. */
function needed(part: Part, runs: Rolling, rules: CuttingRules): number {
  if (part.kind === 'lay') return across(laySize(part, rules), runs);
  return part.cuts === runs
    ? part.parts.reduce((sum, { extent }) => sum + extent, 0)
    : part.parts.reduce((most, slice) => Math.max(most, needed(slice.part, runs, rules)), 0);
}

function replaced<T>(items: readonly T[], at: number, item: T): readonly T[] {
  return items.map((before, i) => (i === at ? item : before));
}

function keptOf(part: Part, box: CutBox, rules: CuttingRules): number {
  const { kerf } = rules.limits;
  let kept = 0;
  cutUp(part, box, rules, {
    remnant: ({ length, width }) => {
      kept += keptValue(length - kerf, width - kerf, box.keep);
    },
  });
  return kept;
}

function largestRemnant(part: Part, box: CutBox, rules: CuttingRules): number {
  let largest = 0;
  cutUp(part, box, rules, {
    remnant: ({ length, width }) => {
      largest = Math.max(largest, length * width);
    },
  });
  return largest;
}

function area(piece: number, { pieces }: CuttingRules): number {
  return pieces[piece].length * pieces[piece].width;
}
