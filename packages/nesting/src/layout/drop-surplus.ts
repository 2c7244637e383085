import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import type { Part, Pattern, Slice } from '../pattern/part.js';
import type { Cutting, PatternCount } from '../pattern/pattern-count.js';
import { patternKey } from '../pattern/pattern-key.js';
import { patternOf } from '../pattern/pattern-of.js';
import { Appraiser } from './appraise.js';
import { countsOf, narrowed, type Path, partAt, without, withPart } from './take-out.js';

/**
 * Takes out what is cut beyond demand, so that every piece comes out exactly as
 * often as it is wanted: whole sheets, then whole slices, then single pieces.
 * What is taken leaves room beside it: later slices move up, and slices that
 * held it are narrowed to the widest piece left in them where the machine allows
 * that and the remnants are worth no less. Sheets that are cut alike are changed
 * alike, as far as the surplus goes.
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
  const appraisers = boxes.map((box) => new Appraiser(box, rules));
  const groups = withoutWholeSheets(sheets, surplus).map(({ pattern, count }) => {
    const appraiser = appraisers[pattern.stockClass];
    const part = withoutWholeSlices(pattern.part, count, surplus, appraiser);
    return { pattern: { ...pattern, part }, count };
  });
  const area = (piece: number) => rules.pieces[piece].length * rules.pieces[piece].width;
  const largestFirst = [...surplus.keys()].sort((a, b) => area(b) - area(a));
  for (const piece of largestFirst) {
    while (surplus[piece] > 0) {
      const { group, part, sheets, copies } = bestChange(groups, piece, surplus[piece], appraisers);
      surplus[piece] -= sheets * copies;
      const changed = { pattern: { ...group.pattern, part }, count: sheets };
      const left = group.count - sheets;
      const rest = left > 0 ? [{ ...group, count: left }] : [];
      groups.splice(groups.indexOf(group), 1, changed, ...rest);
    }
  }
  return merged(
    groups
      .map(({ pattern: { part, stockClass }, count }) => ({
        pattern: patternOf(part, stockClass, boxes[stockClass], rules),
        count,
      }))
      .filter(({ pattern }) => pattern.counts.length > 0),
  );
}

/** The same list with equal patterns counted together, in the order they first come. */
export function merged<P extends Cutting>(
  sheets: readonly PatternCount<P>[],
): readonly PatternCount<P>[] {
  const byKey = new Map<string, PatternCount<P>>();
  for (const { pattern, count } of sheets) {
    const key = patternKey(pattern);
    const before = byKey.get(key);
    byKey.set(key, { pattern: before?.pattern ?? pattern, count: count + (before?.count ?? 0) });
  }
  return [...byKey.values()];
}

/** Of these patterns only what is to be cut and how often; counts and value are stale. */
type Group = { readonly pattern: Pattern; readonly count: number };

function surplusOf(sheets: readonly PatternCount[], demand: readonly number[]): number[] {
  const surplus = demand.map((copies) => -copies);
  for (const { pattern, count } of sheets) {
    for (const [piece, copies] of pattern.counts) surplus[piece] += copies * count;
  }
  const short = surplus.findIndex((copies) => copies < 0);
  if (short >= 0) throw new Error(`piece ${short} comes ${-surplus[short]} short of its demand`);
  return surplus;
}

/** Sheets on which everything is surplus go first; `surplus` is brought up to date. */
function withoutWholeSheets(sheets: readonly PatternCount[], surplus: number[]): Group[] {
  return sheets.flatMap(({ pattern, count }) => {
    const idle = pattern.counts.map(([piece, copies]) => Math.floor(surplus[piece] / copies));
    const gone = Math.min(count, ...idle);
    for (const [piece, copies] of pattern.counts) surplus[piece] -= copies * gone;
    return gone < count ? [{ pattern, count: count - gone }] : [];
  });
}

/** The same for slices, the outermost first; `surplus` is brought up to date. */
function withoutWholeSlices(
  part: Part,
  sheets: number,
  surplus: number[],
  appraiser: Appraiser,
): Part {
  const mayGo = (of: Part) => [...countsOf(of)].some(([piece]) => surplus[piece] >= sheets);
  const stays = ({ part }: Slice) => {
    const counts = [...countsOf(part)];
    const idle = counts.every(([piece, copies]) => copies * sheets <= surplus[piece]);
    if (counts.length === 0 || !idle) return true;
    for (const [piece, copies] of counts) surplus[piece] -= copies * sheets;
    return false;
  };
  let left = part;
  const paths: Path[] = [[]];
  // It grows as it is gone through.
  for (const path of paths) {
    const split = partAt(left, path);
    if (split.kind === 'lay' || !mayGo(split)) continue;
    const parts = split.parts.filter(stays);
    if (parts.length < split.parts.length) {
      left = narrowed(withPart(left, path, { ...split, parts }), path, appraiser);
    }
    parts.forEach((_, at) => {
      paths.push([...path, at]);
    });
  }
  return left;
}

interface Change {
  readonly group: Group;
  readonly part: Part;
  /** How many of the group's sheets are changed. */
  readonly sheets: number;
  /** How many copies are taken out of each. */
  readonly copies: number;
  /** What it is chosen by: the first number that differs decides, the greater is better. */
  readonly merit: readonly number[];
}

function bestChange(
  groups: readonly Group[],
  piece: number,
  surplus: number,
  appraisers: readonly Appraiser[],
): Change {
  let best: Change | undefined;
  for (const group of groups) {
    const { stockClass, part } = group.pattern;
    if (!countsOf(part).has(piece)) continue;
    const appraiser = appraisers[stockClass];
    const before = appraiser.appraise(part);
    const sheets = Math.min(group.count, surplus);
    const most = Math.floor(surplus / sheets);
    for (const { left, path, copies } of without(part, piece, most)) {
      const narrow = narrowed(left, path, appraiser);
      const { kept, wholeness } = appraiser.appraise(narrow);
      const alike = Number(group.count === sheets);
      const merit = [(kept - before.kept) / copies, alike, (wholeness - before.wholeness) / copies];
      if (best === undefined || exceeds(merit, best.merit)) {
        best = { group, part: narrow, sheets, copies, merit };
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
