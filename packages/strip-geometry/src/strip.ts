import type { BendRule } from './bend-rules/bend-rule.js';
import { checkOutline } from './check-outline.js';
import { develop } from './develop.js';
import type { Outline } from './outline.js';
import { startAtSeam } from './seam.js';
import { StripError } from './strip-error.js';
import { printLength } from './wording.js';

/** A cutter to be made. Millimetres. */
export interface CutterSpec {
  /** The inside of the cutter, which is the edge of the cookie. */
  readonly outline: Outline;
  /** Height of the finished cutter, above 0. */
  readonly depth: number;
  /** Width of the edge that is folded over, 0 for a raw edge. */
  readonly hem: number;
  /** Length of the tab that joins the ends, 0 for a butt joint. */
  readonly tab: number;
  readonly bendRule: BendRule;
}

/** A bend on the flat strip. Distances run from the square end. */
export interface BendMark {
  /** 1 for the first bend from the square end. */
  readonly number: number;
  /** The middle of the bend: where to mark, and where to set the pliers. */
  readonly at: number;
  /** Where the metal starts to curve; equal to `at` where bends are taken as sharp. */
  readonly from: number;
  /** Where it is straight again. */
  readonly to: number;
  /** `in` folds toward the inside of the cutter, `out` away from it. */
  readonly direction: 'in' | 'out';
  /** Degrees bent through: 0 would stay flat, 90 is square. */
  readonly angle: number;
}

/** A stretch of the strip that is formed round a curve. */
export interface FormedCurve {
  readonly from: number;
  readonly to: number;
  /** Radius of the outline there, that is of the cutter's inside face. */
  readonly radius: number;
  readonly direction: 'in' | 'out';
  /** Degrees formed through. */
  readonly angle: number;
}

/** The flat strip of one cutter. Millimetres. */
export interface Strip {
  /** Developed length of the outline plus the tab. */
  readonly length: number;
  /** Depth plus hem. */
  readonly width: number;
  readonly depth: number;
  /** Also the distance of the hem line from the edge that is folded. */
  readonly hem: number;
  readonly tab: number;
  /** Length once round the cutter, without the tab. */
  readonly developed: number;
  /** Ascending. */
  readonly bends: readonly BendMark[];
  /** Ascending, apart from the bends. */
  readonly curves: readonly FormedCurve[];
}

/**
 * Lays out the flat strip of a cutter: as long as its outline plus the tab, as
 * wide as it is deep plus the hem, with every bend numbered and measured from
 * the square end. The strip starts at the seam that `startAtSeam` chooses. If
 * that is a corner, the last bend is that corner, where the tab is folded over.
 *
 * @throws OutlineError if the outline is not sound, StripError naming the
 * depth, hem or tab at fault, BendError if the metal cannot follow the outline.
 */
export function makeStrip({ outline, depth, hem, tab, bendRule }: CutterSpec): Strip {
  if (!Number.isFinite(depth) || depth <= 0) {
    throw new StripError('depth', `The depth must be above 0 mm; got ${printLength(depth)}.`);
  }
  checkNotNegative('hem', hem);
  checkNotNegative('tab', tab);
  checkOutline(outline);

  const { segments } = startAtSeam(outline, tab);
  const development = develop(segments, { bendRule, closed: true, metal: 'outside' });
  const { length: developed, runs } = development;
  const bends = runs
    .filter((run) => run.kind === 'bend')
    .map(({ from, to, direction, angle }, index) => {
      return { number: index + 1, at: (from + to) / 2, from, to, direction, angle };
    });
  const curves = runs
    .filter((run) => run.kind === 'curve')
    .map(({ from, to, radius, direction, angle }) => ({ from, to, radius, direction, angle }));
  return { length: developed + tab, width: depth + hem, depth, hem, tab, developed, bends, curves };
}

function checkNotNegative(field: 'hem' | 'tab', value: number): void {
  if (!Number.isFinite(value) || value < 0) {
    throw new StripError(field, `The ${field} must be 0 mm or more; got ${printLength(value)}.`);
  }
}
