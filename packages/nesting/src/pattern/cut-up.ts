import type { Rolling } from '../problem.js';
import type { CuttingRules } from './cutting-rules.js';
import type { LayPart, Part } from './part.js';

/** A rectangle of metal, one kerf longer and wider than it is. */
export interface GrossRectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** One cut of a pattern. */
export interface PatternCut {
  /** 1 + the number of times the direction of cutting has changed. */
  readonly stage: number;
  readonly runs: Rolling;
  /** What it divides. */
  readonly from: GrossRectangle;
  /** Gross extent, square to the cut, of what it parts off nearest the origin. */
  readonly near: number;
  /** True where it trims a piece to size. */
  readonly trim: boolean;
}

/** What is told about a pattern while it is cut up. */
export interface CutUpListener {
  cut?(cut: PatternCut): void;
  piece?(lay: LayPart, at: GrossRectangle): void;
  /** Called only where metal is left. */
  remnant?(at: GrossRectangle): void;
}

/**
 * Cuts a box up as a pattern says, parts in their order, every cut told before
 * those in what it parts off.
 *
 * A piece smaller than its rectangle both ways is trimmed first the way the cuts
 * around it run, so that no stage is added; or, where the shear cannot make so
 * long a cut, the other way first.
 * @returns whether everything fits; what was told of a pattern that does not is void
 */
export function cutUp(
  part: Part,
  box: { readonly length: number; readonly width: number },
  rules: CuttingRules,
  listener: CutUpListener,
): boolean {
  const whole = { x: 0, y: 0, length: box.length, width: box.width };
  const within = (bed: Bed): boolean => {
    const inner = cutUpOnce(bed, rules, listener);
    return inner?.every(within) ?? false;
  };
  return within({ part, at: whole, stage: 1, around: undefined });
}

/** A part where it lies, with the cuts that parted it off. */
export interface Bed {
  readonly part: Part;
  readonly at: GrossRectangle;
  /** Of the cuts around it; 1 for a whole box. */
  readonly stage: number;
  /** How they run; none for a whole box. */
  readonly around: Rolling | undefined;
}

/**
 * The same for the outermost cuts of a part only.
 * @returns what they part off to be cut further, or nothing where it does not fit
 */
export function cutUpOnce(
  { part, at, stage, around }: Bed,
  rules: CuttingRules,
  listener: CutUpListener,
): readonly Bed[] | undefined {
  if (part.kind === 'lay') {
    const fits = trimToSize(part, at, stage, around ?? firstRuns(part, at, rules), rules, listener);
    return fits ? [] : undefined;
  }
  const { cuts: runs } = part;
  const [only] = part.parts;
  if (
    rules.stages === 'free' &&
    around !== undefined &&
    part.parts.length === 1 &&
    only.extent === across(at, runs)
  ) {
    // Where nothing is cut, the direction of cutting does not change.
    return [{ part: only.part, at, stage, around }];
  }
  const own = around === undefined || around === runs ? stage : stage + 1;
  const inner: Bed[] = [];
  let rest = at;
  for (const { extent, part: slice } of part.parts) {
    const left = across(rest, runs);
    if (extent > left) return undefined;
    if (extent < left) {
      listener.cut?.({ stage: own, runs, from: rest, near: extent, trim: false });
    }
    inner.push({ part: slice, at: upTo(rest, runs, extent), stage: own, around: runs });
    rest = beyond(rest, runs, extent);
  }
  tellRemnant(rest, rules, listener);
  return inner;
}

function trimToSize(
  lay: LayPart,
  at: GrossRectangle,
  stage: number,
  around: Rolling,
  rules: CuttingRules,
  listener: CutUpListener,
): boolean {
  const size = laySize(lay, rules);
  if (size.length > at.length || size.width > at.width) return false;
  const { kerf, longestCut } = rules.limits;
  const inReach = across(at, other(around)) - kerf <= longestCut;
  const order = inReach ? [around, other(around)] : [other(around), around];
  let left = at;
  let own = stage;
  let before = around;
  for (const runs of order) {
    const near = across(size, runs);
    if (near === across(left, runs)) continue;
    if (runs !== before) own += 1;
    before = runs;
    listener.cut?.({ stage: own, runs, from: left, near, trim: true });
    tellRemnant(beyond(left, runs, near), rules, listener);
    left = upTo(left, runs, near);
  }
  listener.piece?.(lay, left);
  return true;
}

/** The direction of stage 1 where one piece is trimmed out of the whole box. */
function firstRuns(lay: LayPart, at: GrossRectangle, rules: CuttingRules): Rolling {
  const { firstCut, limits } = rules;
  if (firstCut !== 'either') return firstCut;
  const tooLong = at.length - limits.kerf > limits.longestCut;
  return tooLong || laySize(lay, rules).width === at.width ? 'across' : 'along';
}

function tellRemnant(at: GrossRectangle, { limits }: CuttingRules, listener: CutUpListener): void {
  if (at.length > limits.kerf && at.width > limits.kerf) listener.remnant?.(at);
}

/** Gross size of a piece as it lies. */
export function laySize(
  { piece, turned }: LayPart,
  { pieces, limits: { kerf } }: CuttingRules,
): { readonly length: number; readonly width: number } {
  const { length, width } = pieces[piece];
  return turned
    ? { length: width + kerf, width: length + kerf }
    : { length: length + kerf, width: width + kerf };
}

export function other(runs: Rolling): Rolling {
  return runs === 'along' ? 'across' : 'along';
}

/** Extent of a rectangle square to the cuts. */
export function across(
  { length, width }: { readonly length: number; readonly width: number },
  runs: Rolling,
): number {
  return runs === 'along' ? width : length;
}

function upTo(
  { x, y, length, width }: GrossRectangle,
  runs: Rolling,
  near: number,
): GrossRectangle {
  return runs === 'along' ? { x, y, length, width: near } : { x, y, length: near, width };
}

function beyond(
  { x, y, length, width }: GrossRectangle,
  runs: Rolling,
  near: number,
): GrossRectangle {
  return runs === 'along'
    ? { x, y: y + near, length, width: width - near }
    : { x: x + near, y, length: length - near, width };
}
