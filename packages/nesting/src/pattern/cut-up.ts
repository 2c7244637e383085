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
  const { kerf } = rules.limits;

  function remnant(at: GrossRectangle): void {
    if (at.length > kerf && at.width > kerf) listener.remnant?.(at);
  }

  function divide(
    part: Part,
    from: GrossRectangle,
    stage: number,
    around: Rolling | undefined,
  ): boolean {
    if (part.kind === 'lay') return trimmed(part, from, stage, around ?? firstRuns(part, from));
    const { cuts: runs } = part;
    const own = around === undefined || around === runs ? stage : stage + 1;
    const total = part.parts.reduce((sum, slice) => sum + slice.extent, 0);
    if (total > across(from, runs)) return false;
    let rest = from;
    for (const { extent } of part.parts) {
      if (extent === across(rest, runs)) break;
      listener.cut?.({ stage: own, runs, from: rest, near: extent, trim: false });
      rest = beyond(rest, runs, extent);
    }
    rest = from;
    for (const slice of part.parts) {
      if (!divide(slice.part, upTo(rest, runs, slice.extent), own, runs)) return false;
      rest = beyond(rest, runs, slice.extent);
    }
    remnant(rest);
    return true;
  }

  function trimmed(lay: LayPart, from: GrossRectangle, stage: number, around: Rolling): boolean {
    const size = laySize(lay, rules);
    if (size.length > from.length || size.width > from.width) return false;
    const reach = extentAlong(from, around) - kerf <= rules.limits.longestCut;
    const order = reach ? [around, other(around)] : [other(around), around];
    let left = from;
    let own = stage;
    let runsNow = around;
    for (const runs of order) {
      const near = runs === 'along' ? size.width : size.length;
      if (near === across(left, runs)) continue;
      if (runs !== runsNow) own += 1;
      runsNow = runs;
      listener.cut?.({ stage: own, runs, from: left, near, trim: true });
      remnant(beyond(left, runs, near));
      left = upTo(left, runs, near);
    }
    listener.piece?.(lay, left);
    return true;
  }

  /** For a piece that is trimmed out of the whole box. */
  function firstRuns(lay: LayPart, from: GrossRectangle): Rolling {
    if (rules.firstCut !== 'either') return rules.firstCut;
    const size = laySize(lay, rules);
    const long = from.length - kerf > rules.limits.longestCut;
    return size.width === from.width || long ? 'across' : 'along';
  }

  return divide(part, { x: 0, y: 0, length: box.length, width: box.width }, 1, undefined);
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

function extentAlong(rectangle: GrossRectangle, runs: Rolling): number {
  return across(rectangle, other(runs));
}

function upTo(from: GrossRectangle, runs: Rolling, near: number): GrossRectangle {
  return runs === 'along' ? { ...from, width: near } : { ...from, length: near };
}

function beyond(from: GrossRectangle, runs: Rolling, near: number): GrossRectangle {
  return runs === 'along'
    ? { ...from, y: from.y + near, width: from.width - near }
    : { ...from, x: from.x + near, length: from.length - near };
}
