import { type HemStage, USUAL_HEM_STAGE } from '../notches/hem-side.js';
import { StripError } from '../strip-error.js';
import { printNumber } from '../wording.js';

/** What a shop's hands, tools and metal can do. All have defaults; millimetres and degrees. */
export interface WorkabilityLimits {
  /** The shortest flat beside a bend that pliers can hold, 3 mm when absent (common practice). */
  readonly shortestFlat?: number;
  /**
   * The least inside radius that the metal is bent to without cracking, in
   * thicknesses; 0 when absent, for metal that can be folded flat on itself. See `leastRadii`.
   */
  readonly leastRadius?: number;
  /** Degrees: the widest half-angle of a notch that leaves a hem, 60 when absent (common practice). */
  readonly widestNotch?: number;
  /** How far the hem is folded while the strip is bent, `closed` when absent. */
  readonly hemStage?: HemStage;
  /** Degrees between its sides: the most pointed corner that lets go of dough, 30 when absent (common practice). */
  readonly mostPointed?: number;
  /** The narrowest gap between facing walls that lets go of dough, 4 mm when absent (common practice). */
  readonly narrowestGap?: number;
  /** The smallest mark of the rule; without it marks are not looked at. */
  readonly smallestMark?: number;
}

/** The limits with every default filled in. */
export type CheckedLimits = Required<Omit<WorkabilityLimits, 'smallestMark'>> &
  Pick<WorkabilityLimits, 'smallestMark'>;

/** @throws StripError naming the limit that is out of range. */
export function checkedLimits(limits: WorkabilityLimits): CheckedLimits {
  const { shortestFlat = 3, leastRadius = 0, widestNotch = 60 } = limits;
  const { hemStage = USUAL_HEM_STAGE, mostPointed = 30, narrowestGap = 4, smallestMark } = limits;
  for (const [name, value, most] of [
    ['shortestFlat', shortestFlat, Number.MAX_VALUE],
    ['leastRadius', leastRadius, Number.MAX_VALUE],
    ['widestNotch', widestNotch, 90],
    ['mostPointed', mostPointed, 180],
    ['narrowestGap', narrowestGap, Number.MAX_VALUE],
  ] as const) {
    if (!(value >= 0 && value <= most)) {
      const upTo = most === Number.MAX_VALUE ? 'or more' : `to ${most}`;
      throw new StripError(name, `"${name}" must be 0 ${upTo}; got ${printNumber(value)}.`);
    }
  }
  const checked = { shortestFlat, leastRadius, widestNotch, hemStage, mostPointed, narrowestGap };
  return smallestMark === undefined ? checked : { ...checked, smallestMark };
}

/**
 * The least inside radius for metals of cutters by name, in thicknesses: what a
 * bench takes for sheet of the usual soft temper (common practice). Hard sheet
 * needs more: the builder's log that is tested beside the bend rules, after
 * AC 43.13-1B, takes 2.5 for 2024-T3 aluminium 0.025 in thick.
 */
export const leastRadii: Readonly<Record<string, number>> = {
  tinplate: 0,
  'uncoated steel': 0,
  'galvanized steel': 1,
  copper: 0,
  'stainless steel': 0.5,
  aluminium: 0.5,
  brass: 0.5,
};
