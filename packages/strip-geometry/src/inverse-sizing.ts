import { BendError } from './bend-rules/bend-error.js';
import { perimeter } from './measure.js';
import type { Outline } from './outline.js';
import type { OutlineFamily, OutlineSizes, SizeValue } from './outlines/family.js';
import { type CutterSpec, makeStrip, type Strip } from './strip.js';
import { StripError } from './strip-error.js';
import { LENGTH_TOLERANCE } from './tolerance.js';
import { scaled } from './transform.js';
import { printLength } from './wording.js';

/** All of a cutter but its outline. */
export type CutterWithoutOutline = Omit<CutterSpec, 'outline'>;

/** The largest cutter of one shape that a length of stock gives. */
export interface LargestOutline {
  /** How many times as large as what was given. */
  readonly scale: number;
  readonly outline: Outline;
  /**
   * At most as long as the stock, and shorter by no more than a millionth of a
   * millimetre unless the length leaps over the stock's, see `largestThatFits`.
   */
  readonly strip: Strip;
}

/** The largest cutter of a family, with the sizes to order it by. */
export interface LargestOfFamily extends LargestOutline {
  readonly sizes: OutlineSizes;
}

/**
 * The largest outline of a given shape whose strip, with its seam, comes out of
 * a length of stock. The outline is enlarged or reduced as a whole; hem, tab,
 * depth and metal stay as they are.
 *
 * The length rises with the scale, so the answer is caught between a scale that
 * fits and one that does not, and the two are closed in on by the secant
 * through them, or by halving. Where a tight curve becomes gentle, the neutral
 * axis with a factor F leaps by thickness * turn * (0.5 - F): with F below one
 * half the strip may leap from too short to too long; with F above one half it
 * leaps back, and there may be a second, slightly larger answer than the one found.
 *
 * @throws StripError naming `length` if it is not above 0, or if every size that is
 * short enough is too small to be bent or for its tab; OutlineError if the outline is unsound.
 */
export function largestThatFits(
  outline: Outline,
  cutter: CutterWithoutOutline,
  length: number,
): LargestOutline {
  return largest((scale) => scaled(outline, scale), cutter, length);
}

/**
 * The largest cutter of a family that comes out of a length of stock: the sizes
 * give the shape, and all lengths among them are enlarged or reduced together,
 * while counts, angles and ratios stay.
 *
 * @throws as `largestThatFits` does, and OutlineError if the sizes draw no outline.
 */
export function largestOfFamily(
  family: OutlineFamily,
  sizes: OutlineSizes,
  cutter: CutterWithoutOutline,
  length: number,
): LargestOfFamily {
  const sizesAt = (scale: number) => scaledSizes(family, sizes, scale);
  const found = largest((scale) => family.draw(sizesAt(scale)), cutter, length);
  return { ...found, sizes: sizesAt(found.scale) };
}

/** The sizes with every length in them multiplied by `scale`. */
function scaledSizes(family: OutlineFamily, sizes: OutlineSizes, scale: number): OutlineSizes {
  const entries = Object.entries(sizes).map(([name, value]): [string, SizeValue | undefined] => {
    const kind = family.sizes.find((field) => field.name === name)?.kind;
    if (kind === 'length' && typeof value === 'number') {
      return [name, value * scale];
    }
    if (kind === 'corners' && Array.isArray(value)) {
      return [name, value.map(({ x, y }) => ({ x: x * scale, y: y * scale }))];
    }
    return [name, value];
  });
  return Object.fromEntries(entries);
}

/** A scale that was tried. */
interface Tried {
  readonly scale: number;
  /** Undefined where the metal cannot follow so small an outline, or the tab finds no side. */
  readonly strip: Strip | undefined;
}

/** By how much the bracket is widened at each step, and how often at most. */
const WIDEN = 1.25;
const WIDENINGS = 80;
/** Enough halvings for any bracket to shrink to neighbouring numbers. */
const STEPS = 200;

function largest(
  outlineAt: (scale: number) => Outline,
  cutter: CutterWithoutOutline,
  length: number,
): LargestOutline {
  if (!Number.isFinite(length) || length <= 0) {
    throw new StripError('length', `The length must be above 0 mm; got ${printLength(length)}.`);
  }
  const attempt = (scale: number): Tried => ({
    scale,
    strip: stripOrNone(outlineAt(scale), cutter),
  });
  const isTooLong = ({ strip }: Tried) => strip !== undefined && strip.length > length;

  const guess = attempt(length / perimeter(outlineAt(1)));
  let above = guess;
  for (let step = 0; step < WIDENINGS && !isTooLong(above); step++) {
    above = attempt(above.scale * WIDEN);
  }
  let below = guess;
  for (let step = 0; step < WIDENINGS && isTooLong(below); step++) {
    below = attempt(below.scale / WIDEN);
  }
  const found = closeIn(below, above, length, attempt);
  if (found.strip === undefined) {
    const least =
      above.strip === undefined
        ? ''
        : `; this one needs ${printLength(above.strip.length)} or a little less`;
    const message =
      `No size of this outline that can be bent and joined comes out of ${printLength(length)}` +
      `${least}. Take longer stock, a shorter tab or a smaller bend radius.`;
    throw new StripError('length', message);
  }
  return { scale: found.scale, outline: outlineAt(found.scale), strip: found.strip };
}

/**
 * The larger end of what fits between a scale that is not too long and one that is.
 * It has no strip if nothing in between fits.
 */
function closeIn(
  below: Tried,
  above: Tried,
  length: number,
  attempt: (scale: number) => Tried,
): Tried {
  let [low, high] = [below, above];
  for (let step = 0; step < STEPS; step++) {
    if (low.strip !== undefined && length - low.strip.length <= LENGTH_TOLERANCE) {
      return low;
    }
    const scale = nextScale(low, high, length, step);
    if (!(scale > low.scale && scale < high.scale)) {
      return low;
    }
    const tried = attempt(scale);
    if (tried.strip !== undefined && tried.strip.length > length) {
      high = tried;
    } else {
      low = tried;
    }
  }
  return low;
}

/** Where the secant meets half a tolerance below the length, or every third time the middle. */
function nextScale(low: Tried, high: Tried, length: number, step: number): number {
  if (low.strip !== undefined && high.strip !== undefined && step % 3 !== 2) {
    const wanted = length - LENGTH_TOLERANCE / 2 - low.strip.length;
    const slope = (high.strip.length - low.strip.length) / (high.scale - low.scale);
    return low.scale + wanted / slope;
  }
  return (low.scale + high.scale) / 2;
}

function stripOrNone(outline: Outline, cutter: CutterWithoutOutline): Strip | undefined {
  try {
    return makeStrip({ ...cutter, outline });
  } catch (error) {
    const isTooSmall =
      error instanceof BendError ||
      (error instanceof StripError && ['tab', 'seam', 'seamAt'].includes(error.field));
    if (isTooSmall) {
      return undefined;
    }
    throw error;
  }
}
