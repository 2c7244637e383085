import { StripError } from '../strip-error.js';
import { printLength, printNumber } from '../wording.js';
import { type HemStage, USUAL_HEM_STAGE } from './hem-side.js';

/** How the hem is cut at bends and curves. */
export interface NotchOptions {
  /**
   * Degrees that a notch opens to each side of its bend mark, from 0, a slit, up
   * to but not including 90; 45 without it (common practice).
   */
  readonly halfAngle?: number;
  /** How far the hem is folded while the strip is bent; `USUAL_HEM_STAGE`, closed, without it. */
  readonly hemStage?: HemStage;
  /**
   * How much of its length the free edge of a hem may be stretched or crushed by
   * without a snip, above 0; `USUAL_STRAIN` without it.
   */
  readonly allowedStrain?: number;
  /**
   * Millimetres: formed curves tighter than this are snipped; where it is absent
   * `reliefRadius` reckons it from the strain. 0 for no snips.
   */
  readonly snipRadius?: number;
}

/** The options with what is left out filled in, but for the radius that depends on the strip. */
export type CheckedNotchOptions = Required<Omit<NotchOptions, 'snipRadius'>> &
  Pick<NotchOptions, 'snipRadius'>;

/** Degrees to each side of a notch (common practice). */
export const USUAL_HALF_ANGLE = 45;

/** The part of its length that thin soft tinplate takes at a free edge by hand (common practice). */
export const USUAL_STRAIN = 0.2;

/**
 * The options with what is left out filled in.
 * @throws StripError naming the option that is out of range.
 */
export function checkedOptions({
  halfAngle = USUAL_HALF_ANGLE,
  hemStage = USUAL_HEM_STAGE,
  allowedStrain = USUAL_STRAIN,
  snipRadius,
}: NotchOptions): CheckedNotchOptions {
  if (!(halfAngle >= 0 && halfAngle < 90)) {
    const message =
      'The half-angle of a notch must be from 0 up to but not including 90 degrees; ' +
      `got ${printNumber(halfAngle)}.`;
    throw new StripError('halfAngle', message);
  }
  if (!Number.isFinite(allowedStrain) || allowedStrain <= 0) {
    const message = `The allowed strain must be above 0; got ${printNumber(allowedStrain)}.`;
    throw new StripError('allowedStrain', message);
  }
  if (snipRadius !== undefined && !(snipRadius >= 0 && snipRadius < Number.POSITIVE_INFINITY)) {
    const message = `The snipRadius must be 0 mm or more; got ${printLength(snipRadius)}.`;
    throw new StripError('snipRadius', message);
  }
  const checked = { halfAngle, hemStage, allowedStrain };
  return snipRadius === undefined ? checked : { ...checked, snipRadius };
}
