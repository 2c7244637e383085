import { toRadians } from '../angle.js';
import type { BendRule } from './bend-rule.js';
import { checkAngle, checkFactor, checkLength } from './check-bend.js';
import { depthInCurve } from './gentle-curve.js';

/** The metal and the tool that a neutral-axis rule describes. Millimetres. */
export interface NeutralAxis {
  /** Thickness of the metal, 0 or more. */
  readonly thickness: number;
  /** Radius of the inside face of a sharp bend, 0 or more. */
  readonly insideRadius: number;
  /** Depth of the neutral line below the inside face, as a part of the thickness, 0 to 1. */
  readonly factor: number;
}

/**
 * The bend rule of the neutral line, the line in the metal that neither
 * stretches nor shrinks. A bend through A degrees with inside radius R in
 * metal of thickness T takes up A * (pi / 180) * (R + factor * T).
 *
 * A formed curve is gentle where its inside radius is more than five times the
 * thickness; there the neutral line lies in the middle, at T / 2. In tighter
 * curves it lies at factor * T, as in a bend. See `depthInCurve`.
 *
 * Source of the allowance: Machinery's Handbook, bending sheet metal.
 *
 * @throws BendError if a length is negative, the factor is outside 0 to 1, or
 * a number is not finite; and from `allowance` for an angle outside 0 to 180.
 */
export function neutralAxis({ thickness, insideRadius, factor }: NeutralAxis): BendRule {
  checkLength('thickness', thickness);
  checkLength('insideRadius', insideRadius);
  checkFactor(factor);
  return {
    name: 'neutral axis',
    thickness,
    insideRadius,
    allowance(angle) {
      checkAngle(angle);
      return toRadians(angle) * (insideRadius + factor * thickness);
    },
    neutralDepth(radius) {
      checkLength('insideRadius', radius);
      return depthInCurve(radius, thickness, factor * thickness);
    },
  };
}
