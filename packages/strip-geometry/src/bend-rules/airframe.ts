import { toDegrees } from '../angle.js';
import type { BendRule } from './bend-rule.js';
import { checkAngle, checkChoice, checkLength } from './check-bend.js';
import { depthInCurve } from './gentle-curve.js';

/** Whose print of the per-degree rule: they round pi / 180 differently. */
export type AirframePrint = 'FAA' | 'Navy';

/** The prints, the usual one first. */
export const airframePrints: readonly AirframePrint[] = ['FAA', 'Navy'];

/** The metal and the tool that the airframe rule describes. Millimetres. */
export interface Airframe {
  /** Thickness of the metal, 0 or more. */
  readonly thickness: number;
  /** Radius of the inside face of a sharp bend, 0 or more. */
  readonly insideRadius: number;
  /** `FAA` when absent. */
  readonly print?: AirframePrint;
}

/** What each degree takes up for each unit of inside radius, as printed; pi / 180 is 0.017453. */
const OF_RADIUS: Readonly<Record<AirframePrint, number>> = { FAA: 0.01743, Navy: 0.0173 };

/** What each degree takes up for each unit of thickness, in both prints. */
const OF_THICKNESS = 0.0078;

/**
 * The per-degree rule of airframe work: a bend through N degrees takes up
 * N * (0.01743 R + 0.0078 T), in the Navy's print N * (0.0173 R + 0.0078 T).
 * It puts the neutral line at 0.447 of the thickness.
 *
 * The printed 0.01743 and 0.0173 stand for pi / 180 and are used in bends as
 * printed, so that the charts come out. In a formed curve they would make the
 * strip short by up to 0.9 % of the curve, so there the rule gives a depth
 * below the true circle: half the thickness in a gentle curve, 0.0078 for each
 * degree in a tighter one.
 *
 * Sources: FAA-H-8083-31, Aviation Maintenance Technician Handbook - Airframe,
 * chapter 4 (from memory); the Navy's aviation training manual after NA 01-1A-1.
 *
 * @throws BendError if a length is negative or not finite; and from `allowance`
 * for an angle outside 0 to 180.
 */
export function airframe({ thickness, insideRadius, print = 'FAA' }: Airframe): BendRule {
  checkLength('thickness', thickness);
  checkLength('insideRadius', insideRadius);
  checkChoice('print', airframePrints, print);
  return {
    name: 'airframe',
    thickness,
    insideRadius,
    allowance(angle) {
      checkAngle(angle);
      return angle * (OF_RADIUS[print] * insideRadius + OF_THICKNESS * thickness);
    },
    neutralDepth(radius) {
      checkLength('insideRadius', radius);
      return depthInCurve(radius, thickness, toDegrees(OF_THICKNESS) * thickness);
    },
  };
}
